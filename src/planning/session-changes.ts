import type { Journal, Session } from '../journal/journal';
import type { NotePath } from '../journal/note';
import type { SessionEntry } from '../notation/entries';
import type { TextEdit } from '../notation/text-edit';
import type { IsoDate } from '../notation/time/iso-date';
import { formatTime, type WallMinutes } from '../notation/time/wall-clock';
import { removeFieldEdits, setFieldEdits, tickEdits } from '../notation/write-entry';
import { addToDay } from './day-note';
import { mergeEdits } from './merge-edits';
import type { NoteChange } from './note-change';
import { editBlock, type SessionBlock, sessionBlock } from './session-block';

/** What a change has to know of a session; every {@link Session} has it. */
export type SessionPlace = Pick<Session, 'note' | 'entry' | 'date' | 'movedFrom'>;

/** Effort at which a session turned into recovery is planned: easy. Common practice, no source. */
export const recoveryEffort = 2;

type EntryChange = (text: string, entry: SessionEntry) => readonly TextEdit[];

/**
 * Makes a change where the session is written. A session that another day's note only points to with `moved:`
 * is written into its own day first, with the change made.
 */
function changeSession(journal: Journal, session: SessionPlace, change: EntryChange): readonly NoteChange[] {
  const note = journal.note(session.note);
  if (!note) return [];
  if (session.movedFrom !== undefined) {
    const block = plannedBlock(note.text, session.entry);
    return block ? addToDay(journal, session.date, [editBlock(block, change).text]) : [];
  }
  return editOf(note.path, note.text, change(note.text, session.entry));
}

function editOf(note: NotePath, before: string, edits: readonly TextEdit[]): readonly NoteChange[] {
  return edits.length === 0 ? [] : [{ kind: 'edit', note, before, edits: mergeEdits(edits, []) }];
}

/** The session's line and body as a planned one: box empty, without `moved:` and `skipped:`. */
export function plannedBlock(text: string, entry: SessionEntry): SessionBlock | undefined {
  const block = sessionBlock(text, entry);
  return (
    block &&
    editBlock(block, (own, copy) => [
      ...tickEdits(own, copy, false),
      ...(copy.moved ? removeFieldEdits(own, copy, copy.moved.range) : []),
      ...(copy.skipped ? removeFieldEdits(own, copy, copy.skipped.range) : []),
    ])
  );
}

/** Ticks the session's box, or empties it. */
export function tickSession(journal: Journal, session: SessionPlace, done: boolean): readonly NoteChange[] {
  return changeSession(journal, session, (text, entry) => tickEdits(text, entry, done));
}

/** Marks the session skipped for a reason, or gives another reason. */
export function skipSession(journal: Journal, session: SessionPlace, reason: string): readonly NoteChange[] {
  return changeSession(journal, session, (text, entry) =>
    setFieldEdits(text, entry, entry.skipped, { name: 'skipped', text: reason }),
  );
}

/** Writes how hard the session was, or is meant to be: 0 to 10. */
export function rateSession(journal: Journal, session: SessionPlace, rating: number): readonly NoteChange[] {
  return changeSession(journal, session, (text, entry) =>
    setFieldEdits(text, entry, entry.rating, { text: `${rating}/10` }),
  );
}

/** Edits that give the session another start. A span keeps its length. */
function startEdits(text: string, entry: SessionEntry, start: WallMinutes): readonly TextEdit[] {
  const span = entry.span?.value;
  const end = span?.end === undefined ? '' : `-${formatTime((start + span.end - span.start) % 1440)}`;
  return setFieldEdits(text, entry, entry.span, { text: formatTime(start) + end });
}

/** Gives the session another time of the same day. A span keeps its length. */
export function changeSessionTime(
  journal: Journal,
  session: SessionPlace,
  start: WallMinutes,
): readonly NoteChange[] {
  return changeSession(journal, session, (text, entry) => startEdits(text, entry, start));
}

/**
 * Makes the session one of recovery at an easy effort. Its other fields and its body stay: they are the
 * athlete's words.
 */
export function turnIntoRecovery(journal: Journal, session: SessionPlace): readonly NoteChange[] {
  return changeSession(journal, session, (text, entry) => [
    ...setFieldEdits(text, entry, entry.kind, { text: 'recovery' }),
    ...(entry.rating && entry.rating.value <= recoveryEffort
      ? []
      : setFieldEdits(text, entry, entry.rating, { text: `${recoveryEffort}/10` })),
  ]);
}

/** Where a session goes. */
export interface SessionTarget {
  readonly date: IsoDate;
  /** As before when left out. */
  readonly start?: WallMinutes;
}

/** The edits at the place that a session leaves: `moved:` with its new date. */
export function leavingEdits(text: string, entry: SessionEntry, date: IsoDate): readonly TextEdit[] {
  return [
    ...setFieldEdits(text, entry, entry.moved, { name: 'moved', text: date }),
    ...(entry.skipped ? removeFieldEdits(text, entry, entry.skipped.range) : []),
  ];
}

/** The session as it is to be written where it arrives. */
export function arrivingBlock(text: string, entry: SessionEntry, start?: WallMinutes): string | undefined {
  const block = plannedBlock(text, entry);
  if (!block || start === undefined) return block?.text;
  return editBlock(block, (own, copy) => startEdits(own, copy, start)).text;
}

/**
 * Moves the session to another day: its line gets `moved:` with the date, and the line stands again, un-ticked
 * and with its body, in that day's note. A target on the session's own day changes its time only.
 */
export function moveSession(
  journal: Journal,
  session: SessionPlace,
  target: SessionTarget,
): readonly NoteChange[] {
  if (target.date === session.date)
    return target.start === undefined ? [] : changeSessionTime(journal, session, target.start);
  const note = journal.note(session.note);
  const block = note && arrivingBlock(note.text, session.entry, target.start);
  if (!note || block === undefined) return [];
  const edits = leavingEdits(note.text, session.entry, target.date);
  return [...editOf(note.path, note.text, edits), ...addToDay(journal, target.date, [block])];
}
