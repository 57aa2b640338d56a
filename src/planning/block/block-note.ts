import type { Journal, JournalEvent } from '../../journal/journal';
import type { NotePath } from '../../journal/note';
import { folderOf } from '../../journal/note-path';
import { dayNumber } from '../../notation/time/iso-date';
import { isoWeekOfDay } from '../../notation/time/iso-week';
import { formatSessionLength } from '../../notation/time/length-of-time';
import { usualLineEnding } from '../day-note';
import { freeNotePath } from '../free-note-path';
import { withLineEnding } from '../line-ending';
import type { NoteChange } from '../note-change';
import type { BlockOutline, OutlineWeek } from './block-outline';
import type { KindVolume } from './kind-volumes';

function cell({ sessions, length }: KindVolume): string {
  return sessions === 0 || length === 0 ? '-' : `${sessions} x ${formatSessionLength(length)}`;
}

/** A word in a cell of a table: nothing in it ends the cell or opens HTML, code or a link. */
function inCell(words: string): string {
  return words.replace(/\s+/gu, ' ').replace(/[<`[\]\\|]/g, '\\$&');
}

function notes({ week, role }: OutlineWeek, event: JournalEvent | undefined): string {
  if (!event || isoWeekOfDay(dayNumber(event.date)) !== week) return role;
  return `${role}: ${inCell(event.name === '' ? event.date : `${event.name}, ${event.date}`)}`;
}

function tableText(lines: readonly (readonly string[])[]): string {
  const [header = [], ...rows] = lines;
  // Nothing stands behind the last column that would have to be aligned.
  const widths = header.map((name, column) =>
    column === header.length - 1
      ? name.length
      : Math.max(...lines.map((cells) => [...(cells[column] ?? '')].length)),
  );
  const dashes = widths.map((width) => '-'.repeat(width));
  return [header, dashes, ...rows]
    .map((cells) => `| ${cells.map((text, column) => text.padEnd(widths[column] ?? 0)).join(' | ')} |\n`)
    .join('');
}

/** The text of a block's note: a heading, the tag, and the table that is read back. */
export function blockNoteText({ kinds, weeks, event }: BlockOutline): string {
  const table = tableText([
    ['week', ...kinds, 'notes'],
    ...weeks.map((week) => [week.week, ...week.volumes.map(cell), notes(week, event)]),
  ]);
  return `# Block ${weeks[0]?.week} to ${weeks.at(-1)?.week}\n\n#block\n\n${table}`;
}

/** Where the note of a block goes: beside the journal's other blocks, else into its own folder. The path is free. */
function newBlockNotePath(journal: Journal, { weeks }: BlockOutline): NotePath {
  const beside = journal.plan.blocks.at(-1)?.note;
  const folder = beside === undefined ? journal.root : folderOf(beside);
  return freeNotePath(journal, folder, `block ${weeks[0]?.week} to ${weeks.at(-1)?.week}`);
}

/** The change that writes a block's note. */
export function blockNoteChange(
  journal: Journal,
  outline: BlockOutline,
): Extract<NoteChange, { kind: 'create' }> {
  const text = withLineEnding(blockNoteText(outline), usualLineEnding(journal));
  return { kind: 'create', note: newBlockNotePath(journal, outline), text };
}
