import type { Journal, Session } from '../../journal/journal';
import { type DayNumber, isoDate } from '../../notation/time/iso-date';
import type { SessionFacts } from '../../training/session-facts';
import { isToDo } from '../../training/session-state';
import { addToDay, newDayNoteText, usualLineEnding } from '../day-note';
import { newDayNotePath, noteForDay } from '../day-note-path';
import type { NoteChange } from '../note-change';
import { bodyUnder } from '../session-block';
import { plannedBlock } from '../session-changes';
import { sessionLine } from '../session-line';
import { sessionAt } from './place';
import type { PlacedDemand } from './place-demands';

/** What the note of a day without any session says. */
const restDay = 'Rest day.';

/** The session's line, and the lines of its routine beneath it. */
export function sessionBlockOf(journal: Journal, { demand, place }: PlacedDemand): string {
  const { routine } = demand;
  const line = sessionLine(sessionAt(demand, place.start));
  const note = routine && journal.note(routine.note);
  return note ? line + bodyUnder(note.text, routine.entry) : line;
}

/** A session that was moved to its day and is not written there yet. */
function movedBlock(journal: Journal, session: Session): readonly string[] {
  const note = journal.note(session.note);
  const block = note && plannedBlock(note.text, session.entry);
  return block ? [block.text] : [];
}

/**
 * The changes that write placed sessions into the notes of `days`, and a note for every day that has none: each
 * of them has a note afterwards. What stands in a note stays as it is.
 * @param standing The sessions that stand on these days before.
 */
export function weekNotes(
  journal: Journal,
  days: readonly DayNumber[],
  placed: readonly PlacedDemand[],
  standing: readonly SessionFacts[],
): readonly NoteChange[] {
  return days.flatMap((day): readonly NoteChange[] => {
    const date = isoDate(day);
    const own = placed
      .filter(({ place }) => place.day === day)
      .sort((one, other) => (one.place.start ?? 1440) - (other.place.start ?? 1440));
    const blocks = own.map((one) => sessionBlockOf(journal, one));
    if (noteForDay(journal, date)) return blocks.length === 0 ? [] : addToDay(journal, date, blocks);
    const arriving = standing
      .filter(({ session, state }) => session.day === day && session.movedFrom !== undefined && isToDo(state))
      .flatMap(({ session }) => movedBlock(journal, session));
    const all = [...arriving, ...blocks];
    const text = newDayNoteText(date, all.length === 0 ? [restDay] : all, usualLineEnding(journal));
    return [{ kind: 'create', note: newDayNotePath(journal, date), text }];
  });
}
