import type { Journal } from '../journal/journal';
import type { Entry } from '../notation/entries';
import type { TextEdit } from '../notation/text-edit';
import { dayNumber, type IsoDate } from '../notation/time/iso-date';
import { weekdayName } from '../training/wording';
import { newDayNotePath, newestDayNotes, noteForDay } from './day-note-path';
import { insertLines } from './insert-lines';
import { type LineEnding, lineEndingOf, withLineEnding } from './line-ending';
import { mergeEdits } from './merge-edits';
import type { NoteChange } from './note-change';

/**
 * The text of a new day note: a heading with the day, then what stands in it.
 * @param blocks List items in Markdown, or one line of plain words.
 */
export function newDayNoteText(date: IsoDate, blocks: readonly string[], ending: LineEnding): string {
  const heading = `# ${weekdayName(dayNumber(date))}, ${date}\n`;
  const text = blocks.length === 0 ? heading : `${heading}\n${blocks.join('\n')}\n`;
  return withLineEnding(text, ending);
}

/** The line ending of the athlete's newest day note that has more than one line. */
export function usualLineEnding(journal: Journal): LineEnding {
  for (const note of newestDayNotes(journal, 7)) {
    const ending = lineEndingOf(note.text);
    if (ending) return ending;
  }
  return '\n';
}

const isSession = (entry: Entry) => entry.tag === 'session';

/**
 * The changes that add list items to the note of `date`: behind its last session, or in a new note when the day
 * has none, or none in which they could stand.
 * @param behind Which entries of the note the items follow, the most wanted first; sessions when left out.
 * @param edits Other edits of the same existing note, made in the same change.
 */
export function addToDay(
  journal: Journal,
  date: IsoDate,
  blocks: readonly string[],
  behind: readonly ((entry: Entry) => boolean)[] = [isSession],
  edits: readonly TextEdit[] = [],
): readonly NoteChange[] {
  const note = noteForDay(journal, date);
  const insertion = note && insertLines(note.text, blocks, behind);
  const changes: NoteChange[] = [];
  const own = insertion ? mergeEdits(edits, [insertion]) : edits;
  if (note && own.length > 0) changes.push({ kind: 'edit', note: note.path, before: note.text, edits: own });
  if (!insertion)
    changes.push({
      kind: 'create',
      note: newDayNotePath(journal, date),
      text: newDayNoteText(date, blocks, usualLineEnding(journal)),
    });
  return changes;
}
