import type { Journal, Session } from '../../journal/journal';
import { isoWeekOfDay } from '../../notation/time/iso-week';
import { isToDo } from '../../training/session-state';
import { checkContext } from '../../training/week-under-check';
import { message, weekdayName } from '../../training/wording';
import { changeComparer, isLessened, speaksAgainst, worseFindings } from '../findings-added';
import { joinChanges } from '../join-changes';
import type { NoteChange } from '../note-change';
import { moveSession } from '../session-changes';
import { foundSession } from './found-session';
import { type Slot, sessionIn } from './legal-slots';
import type { Remedy, RemedyMaker, ToMend } from './remedy';

/** The slot that a session leaves to another, which keeps its own time when the slot has none. */
function slotOf(session: Session, other: Session): Slot {
  const start = session.entry.span?.value.start;
  const own = other.entry.span?.value.start;
  return { day: session.day, start: start ?? own };
}

/** Sessions of the week that could change places with `session`, the nearest first. */
function partners({ journal, options }: ToMend, session: Session): readonly Session[] {
  const { weeks, todayNumber } = checkContext(journal, options);
  return weeks(isoWeekOfDay(session.day))
    .standing.filter(
      ({ session: other, state }) =>
        isToDo(state) &&
        other.day !== session.day &&
        other.day >= todayNumber &&
        other.movedFrom === undefined &&
        // What is agreed with somebody else is not moved for the sake of one's own session.
        other.entry.with.length === 0,
    )
    .map((facts) => facts.session)
    .sort(
      (one, other) =>
        Math.abs(one.day - session.day) - Math.abs(other.day - session.day) || one.day - other.day,
    );
}

function movedTo(journal: Journal, session: Session, slot: Slot): readonly NoteChange[] {
  const { date } = sessionIn(session, slot);
  const same = slot.start === undefined || slot.start === session.entry.span?.value.start;
  return moveSession(journal, session, {
    date,
    ...(same || slot.start === undefined ? {} : { start: slot.start }),
  });
}

/** Two moves in one: what leaves a note is marked there before what arrives is written behind it. */
function exchanged(
  [leaves, ...arrives]: readonly NoteChange[],
  [otherLeaves, ...otherArrives]: readonly NoteChange[],
): readonly NoteChange[] {
  if (!leaves || !otherLeaves) return [];
  return [leaves, otherLeaves, ...arrives, ...otherArrives];
}

/** Lets the session change day and time with another of its week, when that breaks no rule. */
export const swapWithAnotherDay: RemedyMaker = function* (mend): Generator<Remedy> {
  const session = foundSession(mend);
  const { journal, finding, options } = mend;
  if (!session || session.movedFrom !== undefined || session.date < options.today) return;
  const compare = changeComparer(journal, options);
  for (const other of partners(mend, session)) {
    const here = slotOf(session, other);
    const there = slotOf(other, session);
    const { before, after } = compare({
      without: [session, other],
      added: [sessionIn(session, there), { ...sessionIn(other, here) }],
    });
    if (worseFindings(before, after).some(speaksAgainst) || !isLessened(finding, after)) continue;
    yield {
      name: 'swap-with-another-day',
      title: message('Swap it with the {0} session of {1}', other.kind, weekdayName(other.day)),
      changes: joinChanges(exchanged(movedTo(journal, session, there), movedTo(journal, other, here))),
      preferred: false,
    };
    return;
  }
};
