import type { BlockEntry, BlockRow, BlockTable, Entry, WrittenVolume } from './entries';
import { isWord } from './field-values';
import type { NotationProblem, UnreadableReason } from './notation-problem';
import type { Heading } from './note-reading';
import type { Located, SourceRange } from './source-range';
import { findTable, type TableCell } from './table-rows';
import { parseIsoWeek } from './time/iso-week';
import { readLength } from './time/length-of-time';

/** The header of the column that holds words and no volume. */
export const notesColumn = 'notes';

/** More minutes than a week has are a slip of the pen. */
const minutesAWeek = 7 * 1440;

const volumeExamples = ['2 x 60min', '120min', '-'];

/** `2 x 60min`, `2x1h15`, `120min`; a dash, a zero or nothing for none. Blanks do not count. */
function readVolume(text: string): Pick<WrittenVolume, 'sessions' | 'minutes'> | undefined {
  const plain = text.replace(/\s+/gu, '');
  if (/^(?:[-–—]|0)?$/u.test(plain)) return { sessions: 0, minutes: 0 };
  const match = /^(?:(\d{1,2})[x×*])?(\d.*)$/iu.exec(plain);
  const length = readLength(match?.[2] ?? '');
  if (!match || !length || length.unit === 'd') return undefined;
  const sessions = match[1] === undefined ? undefined : Number(match[1]);
  const minutes = (sessions ?? 1) * length.minutes;
  if (minutes > minutesAWeek) return undefined;
  return sessions === undefined ? { minutes } : { sessions, minutes };
}

/** Collects the problems of one table. */
class Problems {
  readonly found: NotationProblem[] = [];

  add(reason: UnreadableReason, { range, value: text }: Located<string>, expected?: readonly string[]): void {
    this.found.push({ code: 'unreadable-field', reason, range, text, ...(expected ? { expected } : {}) });
  }
}

type Column = Located<string> | 'notes' | undefined;

function readColumn({ value, range }: TableCell, problems: Problems): Column {
  if (value === '') return undefined;
  if (value.toLowerCase() === notesColumn) return 'notes';
  if (isWord(value)) return { value, range };
  problems.add('not-a-word', { value, range }, ['flexibility']);
  return undefined;
}

function readRow(cells: readonly TableCell[], columns: readonly Column[], problems: Problems) {
  const [first, ...others] = cells;
  if (!first || cells.every(({ value }) => value === '')) return undefined;
  const week = parseIsoWeek(first.value);
  if (week === undefined) {
    // An empty cell has no characters to stand on: the first one of the row that has some does.
    const place = first.value === '' ? (others.find(({ value }) => value !== '') ?? first) : first;
    problems.add('not-a-week', place, ['2026-W10']);
    return undefined;
  }
  const volumes: WrittenVolume[] = [];
  let words: Located<string> | undefined;
  for (const [index, cell] of others.entries()) {
    const column = columns[index];
    if (column === 'notes') words = cell.value === '' ? undefined : cell;
    if (column === 'notes' || column === undefined) continue;
    const volume = readVolume(cell.value);
    if (volume) volumes.push({ kind: column.value, ...volume, range: cell.range });
    else problems.add('not-a-volume', cell, volumeExamples);
  }
  const row: BlockRow = { week: { value: week, range: first.range }, volumes, ...(words ? { words } : {}) };
  return row;
}

/** Reads the first table within `place`; its first column names weeks, the others are kinds, or `notes`. */
function readBlockTable(text: string, place: SourceRange, problems: Problems): BlockTable | undefined {
  const table = findTable(text, place);
  if (!table) return undefined;
  const columns = table.header.slice(1).map((cell) => readColumn(cell, problems));
  const rows: BlockRow[] = [];
  for (const cells of table.rows) {
    const row = readRow(cells, columns, problems);
    if (!row) continue;
    if (rows.some(({ week }) => week.value === row.week.value)) problems.add('repeated-week', row.week);
    else rows.push(row);
  }
  const kinds = columns.flatMap((column) => (typeof column === 'object' ? [column] : []));
  return { kinds, rows: rows.sort((one, other) => (one.week.value < other.week.value ? -1 : 1)) };
}

function withTable(
  text: string,
  entry: BlockEntry,
  end: number,
): { readonly entry: BlockEntry; readonly problems: readonly NotationProblem[] } {
  const problems = new Problems();
  const table = readBlockTable(text, { start: entry.range.end, end }, problems);
  if (!table) problems.add('no-table', { value: '', range: entry.nameRange });
  return { entry: table ? { ...entry, table } : entry, problems: problems.found };
}

/**
 * Gives each `#block` the table below it: the first one up to the next heading or the next `#block`. What cannot be
 * read is a problem on exactly its characters, and the rest of the table counts.
 */
export function withBlockTables(
  text: string,
  entries: readonly Entry[],
  headings: readonly Heading[],
): { readonly entries: readonly Entry[]; readonly problems: readonly NotationProblem[] } {
  const blocks = entries.filter((entry): entry is BlockEntry => entry.tag === 'block');
  if (blocks.length === 0) return { entries, problems: [] };
  const problems: NotationProblem[] = [];
  const read = entries.map((entry) => {
    if (entry.tag !== 'block') return entry;
    const below = [...blocks.map((one) => one.itemRange), ...headings.map((one) => one.range)]
      .map(({ start }) => start)
      .filter((start) => start > entry.range.end);
    const found = withTable(text, entry, Math.min(text.length, ...below));
    problems.push(...found.problems);
    return found.entry;
  });
  return { entries: read, problems };
}
