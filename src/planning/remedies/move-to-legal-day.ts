import type { Session } from '../../journal/journal';
import { formatTime } from '../../notation/time/wall-clock';
import type { FindingCode, Message } from '../../training/finding';
import { checkContext } from '../../training/week-under-check';
import { message, weekdayName } from '../../training/wording';
import { changeComparer, isLessened, speaksAgainst, worseFindings } from '../findings-added';
import { moveSession } from '../session-changes';
import { foundSession } from './found-session';
import { daysToTry, minutesOf, type Slot, sessionIn, slotsOn } from './legal-slots';
import type { Remedy, RemedyMaker, ToMend } from './remedy';

/** Findings that another time of the same day can mend. */
const aboutTheHour: readonly FindingCode[] = ['overlapping-sessions', 'outside-free-hours'];

/** The first slot in which the session breaks nothing and what was found is mended. */
function firstLegalSlot({ journal, finding, options }: ToMend, session: Session): Slot | undefined {
  const context = checkContext(journal, options);
  const compare = changeComparer(journal, options);
  const minutes = minutesOf(context, session);
  const isLegal = (slot: Slot): boolean => {
    const { before, after } = compare({ without: [session], added: [sessionIn(session, slot)] });
    return !worseFindings(before, after).some(speaksAgainst) && isLessened(finding, after);
  };
  const sameDay =
    aboutTheHour.includes(finding.code) && session.day >= context.todayNumber
      ? slotsOn(context, session, session.day, minutes, true).filter(
          ({ start }) => start !== session.entry.span?.value.start,
        )
      : [];
  const legal = sameDay.find(isLegal);
  if (legal) return legal;
  for (const day of daysToTry(session, context.todayNumber)) {
    const slot = slotsOn(context, session, day, minutes, false).find(isLegal);
    if (slot) return slot;
  }
  return undefined;
}

function titleOf(session: Session, { day, start }: Slot): Message {
  const name = weekdayName(day);
  const date = sessionIn(session, { day, start }).date;
  if (day === session.day) return message('Move it to {0} on the same day', formatTime(start ?? 0));
  const other = start !== undefined && start !== session.entry.span?.value.start;
  return other
    ? message(
        'Move it to {0}, {1}, at {2}: the first place that breaks no rule',
        name,
        date,
        formatTime(start),
      )
    : message('Move it to {0}, {1}: the first day that breaks no rule', name, date);
}

/**
 * Moves the session to the first day that breaks no rule: a later day of its week, else an earlier one that is not
 * over, else one of the week after. A session that overlaps another, or stands outside the free hours, stays on its
 * day when another time of it will do.
 */
export const moveToLegalDay: RemedyMaker = function* (mend): Generator<Remedy> {
  const session = foundSession(mend);
  const slot = session && firstLegalSlot(mend, session);
  if (!session || !slot) return;
  const { date } = sessionIn(session, slot);
  const target =
    slot.start === undefined || slot.start === session.entry.span?.value.start ? {} : { start: slot.start };
  yield {
    name: 'move-to-legal-day',
    title: titleOf(session, slot),
    changes: moveSession(mend.journal, session, { date, ...target }),
    preferred: mend.finding.code !== 'session-overdue',
  };
};
