import { parseIsoWeek } from '../../notation/time/iso-week';
import { formatTime } from '../../notation/time/wall-clock';
import { checkContext } from '../../training/week-under-check';
import { message, weekdayName } from '../../training/wording';
import { addToDay } from '../day-note';
import { changeChecker } from '../findings-added';
import { demandsOf } from '../next-week/demand';
import { habitsBefore } from '../next-week/habits';
import { placeDemands } from '../next-week/place-demands';
import { sessionBlockOf } from '../next-week/week-notes';
import type { Remedy, RemedyMaker } from './remedy';

/** Adds the recovery session that a week lacks, where recovery usually stands or on the first day that allows it. */
export const addRecoverySession: RemedyMaker = function* ({ journal, finding, options }): Generator<Remedy> {
  const week = parseIsoWeek(String(finding.facts.week));
  if (!week) return;
  const context = checkContext(journal, options);
  const habits = habitsBefore(context.weeks, week);
  const wanted = demandsOf(context, week, habits).filter(({ kinds }) => kinds.includes('recovery'));
  let places = 0;
  const number = () => {
    places += 1;
    return places;
  };
  const check = changeChecker(journal, options);
  const [placed] = placeDemands(context, week, wanted.slice(0, 1), habits, check, number).placed;
  if (!placed) return;
  const { day, start, timed } = placed.place;
  const { date } = timed.facts.session;
  yield {
    name: 'add-recovery-session',
    title:
      start === undefined
        ? message('Add a recovery session on {0}, {1}', weekdayName(day), date)
        : message('Add a recovery session on {0}, {1}, at {2}', weekdayName(day), date, formatTime(start)),
    changes: addToDay(journal, date, [sessionBlockOf(journal, placed)]),
    preferred: true,
  };
};
