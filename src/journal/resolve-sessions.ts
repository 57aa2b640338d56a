import type { SessionEntry } from '../notation/entries';
import { dayNumber, type IsoDate } from '../notation/time/iso-date';
import { copiesOf } from './copies';
import type { DuplicateSession, Session } from './journal';
import type { Note } from './note';
import { baseName, comparePaths } from './note-path';

/** A note whose name gives it a day. */
export type DayNote = Note & { readonly name: { readonly kind: 'day'; readonly date: IsoDate } };

/** Whether `note` belongs to a day. */
export function isDayNote(note: Note): note is DayNote {
  return note.name.kind === 'day';
}

/** The sessions that the notes of one day write. */
export interface WrittenSessions {
  /** Each session once. */
  readonly kept: readonly Session[];
  readonly duplicates: readonly DuplicateSession[];
}

/** The sessions of one note, in the order of its text. A tag without a readable kind is none. */
export function sessionsOf(note: DayNote): readonly Session[] {
  const date = note.name.date;
  const day = dayNumber(date);
  return note.reading.entries.flatMap((entry) =>
    entry.tag === 'session' && entry.kind
      ? [{ note: note.path, entry, date, day, kind: entry.kind.value }]
      : [],
  );
}

/** Whether nothing says yet what became of a session, or is to become of it: it is not ticked, skipped or moved away. */
export function isOpenSession({ entry, movedFrom }: Session): boolean {
  return !entry.skipped && !entry.task?.checked && (!entry.moved || movedFrom !== undefined);
}

/** The line's own text without what a later look at it adds: box, rating and remark. */
function plannedText(note: Note, entry: SessionEntry): string {
  const start = entry.nameRange.end;
  const rating = entry.rating?.range;
  const text = rating
    ? `${note.text.slice(start, rating.start)} ${note.text.slice(rating.end, entry.fieldsEnd)}`
    : note.text.slice(start, entry.fieldsEnd);
  return text.trim().replace(/\s+/gu, ' ');
}

function samenessOf(note: Note, session: Session): string {
  const start = session.entry.span?.value.start;
  return start === undefined
    ? `${session.kind} ${plannedText(note, session.entry)}`
    : `${session.kind} at ${start}`;
}

function isDone(session: Session): boolean {
  const { task, skipped, moved } = session.entry;
  return task?.checked === true && skipped === undefined && moved === undefined;
}

/** The one that counts comes first: a done one, then the one in the note with the shorter name. */
function compareWorth(a: Session, b: Session): number {
  return (
    Number(isDone(b)) - Number(isDone(a)) ||
    baseName(a.note).length - baseName(b.note).length ||
    comparePaths(a.note, b.note)
  );
}

/** Order within a day: by start, those without a time last; then by note and place. */
export function compareSessions(a: Session, b: Session): number {
  const aStart = a.entry.span?.value.start ?? Number.MAX_SAFE_INTEGER;
  const bStart = b.entry.span?.value.start ?? Number.MAX_SAFE_INTEGER;
  return (
    a.day - b.day ||
    aStart - bStart ||
    comparePaths(a.note, b.note) ||
    a.entry.range.start - b.entry.range.start
  );
}

/**
 * The sessions of one day's notes. Two of different notes are the same session when they have the same kind and
 * start, or no time and the same text; one note may hold two alike, and then both count.
 */
export function resolveWrittenSessions(notes: readonly DayNote[]): WrittenSessions {
  const perNote = notes.map((note) =>
    sessionsOf(note).map((session) => ({ key: samenessOf(note, session), value: session })),
  );
  const groups = copiesOf(perNote).map((group) => [...group].sort(compareWorth));
  const kept: Session[] = [];
  const duplicates: DuplicateSession[] = [];
  for (const [first, ...copies] of groups) {
    if (first === undefined) continue;
    kept.push(first);
    if (copies.length > 0) duplicates.push({ kept: first, copies });
  }
  return {
    kept: kept.sort(compareSessions),
    duplicates: duplicates.sort((a, b) => compareSessions(a.kept, b.kept)),
  };
}

/**
 * The sessions of a day: those written in its notes, and those that were moved to it. A moved one stands here only
 * while no other session of its kind is written, because moving a session writes it in the other note as well; one
 * that says both `moved:` and `skipped:` was given up and does not stand again.
 *
 * @param written what the day's own notes write, copies left out
 * @param arriving kept sessions, of any day, whose `moved:` names this one
 */
export function resolveStandingSessions(
  date: IsoDate,
  written: readonly Session[],
  arriving: readonly Session[],
): readonly Session[] {
  const day = dayNumber(date);
  const isWritten = (origin: Session) =>
    written.some((session) => session.kind === origin.kind && session !== origin);
  const moved = arriving
    .filter((origin) => origin.entry.skipped === undefined && !isWritten(origin))
    .map((origin) => ({ ...origin, date, day, movedFrom: origin.date }));
  return [...written, ...moved].sort(compareSessions);
}
