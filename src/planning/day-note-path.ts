import type { Journal } from '../journal/journal';
import type { Note, NotePath } from '../journal/note';
import { baseName } from '../journal/note-path';
import { dayNumber, type IsoDate } from '../notation/time/iso-date';
import { isoWeekOf } from '../notation/time/iso-week';

/** How many of the newest day notes tell where the next one belongs. */
const notesToAsk = 7;

/** The parts of a date that a folder's name can be made of. */
function dateParts(date: IsoDate): { readonly [name: string]: string } {
  const week = isoWeekOf(date);
  return {
    '{year-month}': date.slice(0, 7),
    '{week}': week,
    '{year}': date.slice(0, 4),
    '{month}': date.slice(5, 7),
    '{week-number}': week.slice(5),
  };
}

/**
 * The folder of a day note with the parts that come from its date made general:
 * `diary/2026/02` of a note of February 2026 is `diary/{year}/{month}`. A bare month or week number is only
 * taken for one beneath its year.
 */
export function folderPattern(folder: NotePath, date: IsoDate): string {
  const parts = Object.entries(dateParts(date));
  let belowYear = false;
  return folder
    .split('/')
    .map((segment) => {
      const name = parts.find(([, text]) => text === segment)?.[0];
      if (name === '{year}') belowYear = true;
      return name === undefined || (name === '{month}' && !belowYear) ? segment : name;
    })
    .join('/');
}

/** The folder that `pattern` gives for `date`. */
export function folderOf(pattern: string, date: IsoDate): NotePath {
  const parts = dateParts(date);
  return pattern
    .split('/')
    .map((segment) => parts[segment] ?? segment)
    .join('/');
}

/** The first ten characters of a note's name: the day of a day note, from its path. */
export function dateOfNote(path: NotePath): string {
  return baseName(path).slice(0, 10);
}

/** How many days back from the last note the newest are looked for, before every note is looked at. */
const daysBack = 400;

function newestFirst(notes: readonly Note[]): readonly Note[] {
  const dateOf = ({ name }: Note) => (name.kind === 'day' ? name.date : '');
  return notes
    .filter(({ name }) => name.kind === 'day')
    .sort((one, other) => (dateOf(one) < dateOf(other) ? 1 : dateOf(one) > dateOf(other) ? -1 : 0));
}

/** The newest day notes of the journal, the newest first. */
export function newestDayNotes(journal: Journal, count: number): readonly Note[] {
  const last = journal.span()?.last;
  if (last === undefined) return [];
  const notes: Note[] = [];
  for (let day = last; day > last - daysBack && notes.length < count; day -= 1)
    notes.push(...journal.notesOf(day));
  // Where few notes lie there, as behind one with a mistyped year, all of them are looked through.
  return (notes.length < count ? newestFirst([...journal.notes()]) : notes).slice(0, count);
}

/** The note's folder, seen from the journal's own. */
function folderWithin(journal: Journal, note: Note): NotePath {
  const within = journal.root === '' ? note.path : note.path.slice(journal.root.length + 1);
  return within.slice(0, Math.max(0, within.lastIndexOf('/')));
}

/**
 * Where the note of `date` belongs: in the folder that most of the athlete's newest day notes would give it
 * (the newest note's on a tie), or in the journal's own folder when there are none. The path is free; a day
 * note that already exists for the date is not looked for.
 */
export function newDayNotePath(journal: Journal, date: IsoDate): NotePath {
  const votes = new Map<string, number>();
  for (const note of newestDayNotes(journal, notesToAsk)) {
    if (note.name.kind !== 'day') continue;
    const pattern = folderPattern(folderWithin(journal, note), note.name.date);
    votes.set(pattern, (votes.get(pattern) ?? 0) + 1);
  }
  let best: string | undefined;
  for (const [pattern, count] of votes)
    if (best === undefined || count > (votes.get(best) ?? 0)) best = pattern;
  const start = [journal.root, folderOf(best ?? '', date), date].filter((part) => part !== '').join('/');
  let path = `${start}.md`;
  for (let number = 2; journal.note(path); number += 1) path = `${start} ${number}.md`;
  return path;
}

/**
 * The note of `date` into which a session goes: the one with the last session, otherwise the one with the
 * shortest name, so that a copy left behind by a sync program is the last to be chosen.
 */
export function noteForDay(journal: Journal, date: IsoDate): Note | undefined {
  const notes = [...journal.notesOf(dayNumber(date))].sort(
    (one, other) => one.path.length - other.path.length || (one.path < other.path ? -1 : 1),
  );
  const withSession = notes.find((note) => note.reading.entries.some((entry) => entry.tag === 'session'));
  return withSession ?? notes[0];
}
