import type { Session } from '../../journal/journal';
import { formatTime } from '../../notation/time/wall-clock';
import type { FindingCode, Message } from '../../training/finding';
import { checkContext } from '../../training/week-under-check';
import { message, weekdayName } from '../../training/wording';
import { changeComparer, isLessened, speaksAgainst, worseFindings } from '../findings-added';
import { joined, separated } from '../plan-weeks/joined-messages';
import { moveSession } from '../session-changes';
import { bestMoves, type Move } from './best-moves';
import { foundSession } from './found-session';
import { daysToTry, minutesOf, type Slot, sessionIn, slotsOn } from './legal-slots';
import type { Remedy, RemedyMaker, ToMend } from './remedy';

/** Findings that another time of the same day can mend. */
const aboutTheHour: readonly FindingCode[] = ['overlapping-sessions', 'outside-free-hours'];

/** Whether the session breaks nothing in a slot, and what was found is mended there. */
function legality({ journal, finding, options }: ToMend, session: Session): (slot: Slot) => boolean {
  const compare = changeComparer(journal, options);
  return (slot) => {
    const { before, after } = compare({ without: [session], added: [sessionIn(session, slot)] });
    return !worseFindings(before, after).some(speaksAgainst) && isLessened(finding, after);
  };
}

/** The nearest slot in which the session is legal. */
function firstLegalSlot(
  { journal, finding, options }: ToMend,
  session: Session,
  isLegal: (slot: Slot) => boolean,
): Slot | undefined {
  const context = checkContext(journal, options);
  const minutes = minutesOf(context, session);
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

function firstTitle(session: Session, { day, start }: Slot): Message {
  const name = weekdayName(day);
  const { date } = sessionIn(session, { day, start });
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

function otherTitle(session: Session, { slot, words }: Move): Message {
  const { day, start } = slot;
  const { date } = sessionIn(session, slot);
  const place =
    start === undefined
      ? message('Move it to {0}, {1}: ', weekdayName(day), date)
      : message('Move it to {0}, {1}, at {2}: ', weekdayName(day), date, formatTime(start));
  return joined([place, words]);
}

/** Places offered beside the first legal one. */
const others = 2;

/**
 * Moves the session to the first day that breaks no rule: a later day of its week, else an earlier one that is not
 * over, else one of the week after. A session that overlaps another, or stands outside the free hours, stays on its
 * day when another time of it will do. Beside it, the best places on other days. Each says what it costs.
 */
export const moveToLegalDay: RemedyMaker = function* (mend): Generator<Remedy> {
  const session = foundSession(mend);
  if (!session) return;
  const isLegal = legality(mend, session);
  const move = (slot: Slot, title: Message, preferred: boolean): Remedy => {
    const { date } = sessionIn(session, slot);
    const { start } = slot;
    const target = start === undefined || start === session.entry.span?.value.start ? {} : { start };
    const changes = moveSession(mend.journal, session, { date, ...target });
    return { name: 'move-to-legal-day', title, changes, preferred };
  };
  const first = firstLegalSlot(mend, session, isLegal);
  if (!first) return;
  const moves = bestMoves(mend, session, {
    first,
    isLegal: (slot) => slot.day !== first.day && slot.day !== session.day && isLegal(slot),
    others,
  });
  const title = firstTitle(session, first);
  yield move(
    first,
    moves.first ? joined(separated([title, moves.first], '; ')) : title,
    mend.finding.code !== 'session-overdue',
  );
  for (const other of moves.others) yield move(other.slot, otherTitle(session, other), false);
};
