import { dayNumber } from '../../notation/time/iso-date';
import { parseIsoWeek } from '../../notation/time/iso-week';
import { formatTime } from '../../notation/time/wall-clock';
import { message, weekdayName } from '../../training/wording';
import { addToDay } from '../day-note';
import { planWeeks } from '../plan-weeks';
import { newSessionBlock } from '../plan-weeks/week-notes';
import type { Remedy, RemedyMaker } from './remedy';

/** Adds the recovery session that a week lacks, where recovery usually stands or on the first day that allows it. */
export const addRecoverySession: RemedyMaker = function* ({ journal, finding, options }): Generator<Remedy> {
  const week = parseIsoWeek(String(finding.facts.week));
  if (!week) return;
  const plan = planWeeks(journal, {
    ...options,
    weeks: [week],
    only: ({ kinds }) => kinds.includes('recovery'),
    explain: false,
  });
  const [placed] = plan.placed;
  if (placed?.asked.what.is !== 'new') return;
  const { date, start } = placed;
  const name = weekdayName(dayNumber(date));
  yield {
    name: 'add-recovery-session',
    title:
      start === undefined
        ? message('Add a recovery session on {0}, {1}', name, date)
        : message('Add a recovery session on {0}, {1}, at {2}', name, date, formatTime(start)),
    changes: addToDay(journal, date, [newSessionBlock(journal, placed.asked.what.demand, start)]),
    preferred: true,
  };
};
