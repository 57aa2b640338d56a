import type { Journal } from '../../journal/journal';
import type { Note } from '../../journal/note';
import { scanLines } from '../../notation/markdown/scan-lines';
import type { Heading } from '../../notation/note-reading';
import type { TextEdit } from '../../notation/text-edit';
import { addDays, type DayNumber, dayNumber, type IsoDate, isoDate } from '../../notation/time/iso-date';
import { sessionState } from '../../training/session-state';
import { newDayNoteText, usualLineEnding } from '../day-note';
import { newDayNotePath, noteForDay } from '../day-note-path';
import { insertLines, onlyAdds } from '../insert-lines';
import { lineEndingOf, linesOf, withLineEnding } from '../line-ending';
import type { NoteChange } from '../note-change';

/** What a coach writes to an athlete. */
export interface CoachComment {
  readonly words: string;
  /** The words of the heading under which it stands. */
  readonly heading: string;
}

/** The note that a comment goes into, and the change that writes it. */
export interface CommentToWrite {
  readonly date: IsoDate;
  readonly isNew: boolean;
  readonly changes: readonly NoteChange[];
}

/** Weeks ahead in which a note is looked for: later ones are a plan of which nobody knows whether it holds. */
const daysAhead = 28;

/** A tag, a heading or HTML at the start of a line is the coach's own words, and no tag of the athlete's. */
function plainLine(line: string): string {
  return line
    .replace(/^([\s>*+\-0-9.)[\]xX]*)([#<])/u, '$1\\$2')
    .replace(/^(\s*)(`{3}|~{3})/, '$1\\$2')
    .trimEnd();
}

/** The comment as a block quote, a line of it a line. */
function quoteOf(words: string): string {
  const lines = linesOf(words.trim()).map(plainLine);
  return lines.map((line) => (line === '' ? '>' : `> ${line.trimStart()}`)).join('\n');
}

/** A heading's words in one line, never empty. */
function headingWords(heading: string): string {
  const words = heading
    .replace(/\s+/g, ' ')
    .replace(/[\\#<`[\]]/g, '')
    .trim();
  return words === '' ? 'From the coach' : words;
}

function isToDo(journal: Journal, day: DayNumber, today: IsoDate): boolean {
  return journal.sessions(day, day).some((session) => sessionState(session, today) === 'planned');
}

/** The next note that the athlete will open: today's while a session in it is still to do, else a later one. */
function nextNote(
  journal: Journal,
  today: IsoDate,
): { readonly date: IsoDate; readonly note: Note } | undefined {
  const first = dayNumber(today);
  for (let day = first; day <= first + daysAhead; day += 1) {
    const note = noteForDay(journal, isoDate(day));
    if (note && (day > first || isToDo(journal, day, today))) return { date: isoDate(day), note };
  }
  return undefined;
}

/** Where the part of a note under a heading ends: at the next heading that is as deep or less deep. */
function endOfPart(text: string, heading: Heading, headings: readonly Heading[]): number {
  const next = headings.find(
    ({ depth, range }) => range.start > heading.range.start && depth <= heading.depth,
  );
  return next?.range.start ?? text.length;
}

/** Behind the last words before `end`, an empty line between; `undefined` where the lines would read as something else. */
function behindWords(text: string, end: number, lines: string): TextEdit | undefined {
  const ending = lineEndingOf(text) ?? '\n';
  const before = text.slice(0, end).trimEnd().length;
  if (before === 0) return undefined;
  const edit = {
    range: { start: before, end: before },
    text: ending + ending + withLineEnding(lines, ending),
  };
  return onlyAdds(text, edit, lines) ? edit : undefined;
}

/** Behind what stands under the coach's heading already, when there is one. */
function underHeading(text: string, quote: string, words: string): TextEdit | undefined {
  const { headings } = scanLines(text);
  const heading = headings.filter((one) => one.text === words).at(-1);
  return heading && behindWords(text, endOfPart(text, heading, headings), quote);
}

/**
 * Writes a coach's comment as a block quote into the next note that the athlete will open, under a heading of the
 * coach's own; behind earlier comments when the heading is there. Tags in it are plain words. When no note of the next
 * four weeks is written yet, tomorrow gets one.
 * @returns `undefined` for a comment without words.
 */
export function writeComment(
  journal: Journal,
  today: IsoDate,
  { words, heading }: CoachComment,
): CommentToWrite | undefined {
  if (words.trim() === '') return undefined;
  const quote = quoteOf(words);
  const title = headingWords(heading);
  const lines = [`## ${title}`, '', quote];
  const found = nextNote(journal, today);
  if (found) {
    const { note, date } = found;
    const edit =
      underHeading(note.text, quote, title) ??
      behindWords(note.text, note.text.length, lines.join('\n')) ??
      insertLines(note.text, lines, []);
    if (edit)
      return {
        date,
        isNew: false,
        changes: [{ kind: 'edit', note: note.path, before: note.text, edits: [edit] }],
      };
  }
  const date = found?.date ?? addDays(today, 1);
  const text = newDayNoteText(date, lines, usualLineEnding(journal));
  return { date, isNew: true, changes: [{ kind: 'create', note: newDayNotePath(journal, date), text }] };
}
