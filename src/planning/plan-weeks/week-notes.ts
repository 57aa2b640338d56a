import type { Journal, Session } from '../../journal/journal';
import type { NotePath } from '../../journal/note';
import type { Entry } from '../../notation/entries';
import type { TextEdit } from '../../notation/text-edit';
import { type DayNumber, isoDate } from '../../notation/time/iso-date';
import type { SessionFacts } from '../../training/session-facts';
import { isToDo } from '../../training/session-state';
import { addToDay, newDayNoteText, usualLineEnding } from '../day-note';
import { newDayNotePath, noteForDay } from '../day-note-path';
import { mergeEdits } from '../merge-edits';
import type { NoteChange } from '../note-change';
import { bodyUnder } from '../session-block';
import { arrivingBlock, changeSessionTime, leavingEdits, plannedBlock } from '../session-changes';
import { sessionLine } from '../session-line';
import { type Demand, lineAt } from '../week-problem/demands';
import type { PlannedSession } from './weeks-plan';

/** What the note of a day without any session says. */
const restDay = 'Rest day.';

const isSession = (entry: Entry) => entry.tag === 'session';

/** A new session's line, and the lines of its routine beneath it. */
export function newSessionBlock(journal: Journal, demand: Demand, start: PlannedSession['start']): string {
  const { routine } = demand;
  const line = sessionLine(lineAt(demand, start));
  const note = routine && journal.note(routine.note);
  return note ? line + bodyUnder(note.text, routine.entry) : line;
}

/** A session that was moved to its day and is not written there yet. */
function movedBlock(journal: Journal, session: Session): readonly string[] {
  const note = journal.note(session.note);
  const block = note && plannedBlock(note.text, session.entry);
  return block ? [block.text] : [];
}

/** Edits at the places that sessions leave, and the blocks that arrive. */
interface Writing {
  readonly blocks: Map<string, string[]>;
  readonly edits: Map<NotePath, readonly TextEdit[]>;
}

function addEdits({ edits }: Writing, note: NotePath, more: readonly TextEdit[]): void {
  edits.set(note, mergeEdits(edits.get(note) ?? [], more));
}

function write(journal: Journal, session: PlannedSession, writing: Writing): void {
  const arrive = (block: string) =>
    writing.blocks.set(session.date, [...(writing.blocks.get(session.date) ?? []), block]);
  const { what } = session.asked;
  if (what.is === 'new') {
    arrive(newSessionBlock(journal, what.demand, session.start));
    return;
  }
  const from = what.session;
  const note = journal.note(from.note);
  if (!note) return;
  if (session.date === from.date && from.movedFrom === undefined) {
    for (const change of session.start === undefined ? [] : changeSessionTime(journal, from, session.start))
      if (change.kind === 'edit') addEdits(writing, change.note, change.edits);
    return;
  }
  const same = session.start === from.entry.span?.value.start;
  const block = arrivingBlock(note.text, from.entry, same ? undefined : session.start);
  if (block === undefined) return;
  if (session.date !== from.date)
    addEdits(writing, note.path, leavingEdits(note.text, from.entry, session.date));
  arrive(block);
}

/**
 * The changes that write planned sessions into the notes of their days: new ones with the lines of their routine, moved
 * ones with their own. What stands in a note stays as it is, but for `moved:` at the places that sessions leave.
 * @param days Days that have a note afterwards, of rest when nothing stands on them.
 * @param standing The sessions that stand on these days before.
 */
export function weekNotes(
  journal: Journal,
  days: readonly DayNumber[],
  sessions: readonly PlannedSession[],
  standing: readonly SessionFacts[],
): readonly NoteChange[] {
  const writing: Writing = { blocks: new Map(), edits: new Map() };
  const inOrder = [...sessions].sort((one, other) => (one.start ?? 1440) - (other.start ?? 1440));
  for (const session of inOrder) write(journal, session, writing);
  const dates = new Set([...days.map(isoDate), ...inOrder.map(({ date }) => date)]);
  const changes = [...dates].sort().flatMap((date): readonly NoteChange[] => {
    const blocks = writing.blocks.get(date) ?? [];
    const note = noteForDay(journal, date);
    if (note) {
      if (blocks.length === 0) return [];
      const edits = writing.edits.get(note.path) ?? [];
      writing.edits.delete(note.path);
      return addToDay(journal, date, blocks, [isSession], edits);
    }
    const arriving = standing
      .filter(
        ({ session, state }) => session.date === date && session.movedFrom !== undefined && isToDo(state),
      )
      .filter(({ session }) => !inOrder.some(({ from }) => from === session))
      .flatMap(({ session }) => movedBlock(journal, session));
    const all = [...arriving, ...blocks];
    const text = newDayNoteText(date, all.length === 0 ? [restDay] : all, usualLineEnding(journal));
    return [{ kind: 'create', note: newDayNotePath(journal, date), text }];
  });
  const left = [...writing.edits].flatMap(([path, edits]): readonly NoteChange[] => {
    const note = journal.note(path);
    return note && edits.length > 0 ? [{ kind: 'edit', note: path, before: note.text, edits }] : [];
  });
  return [...changes, ...left];
}
