import type { Located, SourceRange } from './source-range';

/** A cell; its range leaves out the blanks around its words. An empty cell has an empty range. */
export type TableCell = Located<string>;

/** A table of GitHub Flavored Markdown. Every row has as many cells as the header. */
export interface Table {
  readonly header: readonly TableCell[];
  readonly rows: readonly (readonly TableCell[])[];
}

interface Line extends SourceRange {
  readonly words: string;
}

function linesWithin(text: string, { start, end }: SourceRange): readonly Line[] {
  const lines: Line[] = [];
  const ending = /\r\n|\n|\r/g;
  ending.lastIndex = start;
  for (let from = start; from <= end; ) {
    const found = ending.exec(text);
    const to = Math.min(found?.index ?? text.length, end);
    lines.push({ start: from, end: to, words: text.slice(from, to) });
    if (!found || ending.lastIndex > end) break;
    from = ending.lastIndex;
  }
  return lines;
}

function trimmed(text: string, start: number, end: number): TableCell {
  let from = start;
  let to = end;
  while (from < to && /[ \t]/.test(text[from] ?? '')) from += 1;
  while (to > from && /[ \t]/.test(text[to - 1] ?? '')) to -= 1;
  return { value: text.slice(from, to).replace(/\\\|/g, '|'), range: { start: from, end: to } };
}

/** The cells of a row: split at pipes that no backslash escapes, the ones at both ends left out. */
function cellsOf(text: string, line: Line): readonly TableCell[] {
  const whole = trimmed(text, line.start, line.end).range;
  const start = text[whole.start] === '|' ? whole.start + 1 : whole.start;
  const cells: TableCell[] = [];
  let from = start;
  for (let at = start; at < whole.end; at += 1) {
    if (text[at] === '\\' && text[at + 1] === '|') at += 1;
    else if (text[at] === '|') {
      cells.push(trimmed(text, from, at));
      from = at + 1;
    }
  }
  const endsWithPipe = from === whole.end && from > start;
  return endsWithPipe ? cells : [...cells, trimmed(text, from, whole.end)];
}

function isDelimiterRow(cells: readonly TableCell[]): boolean {
  return cells.every(({ value }) => /^:?-+:?$/.test(value));
}

const indentedCode = /^(?: {4}| {0,3}\t)/;

/** What begins another block, and so ends a table: a quotation, a heading, a fence, HTML, a list item or a rule. */
const beginsOther =
  /^ {0,3}(?:>|#{1,6}(?:[ \t]|$)|`{3}|~{3}|<[A-Za-z!/?]|[-+*](?:[ \t]|$)|\d{1,9}[.)](?:[ \t]|$)|(?:[-*_][ \t]*){3,}$)/;

const fence = /^ {0,3}(`{3,}|~{3,})/;

/** A line of nothing, or of one pipe alone, heads no table. */
function isBlankOrPipe(words: string): boolean {
  const marks = words.replace(/[ \t]/g, '');
  return marks === '' || marks === '|';
}

/**
 * The first table within `place`, outside of fenced code and comments: a header, a row of dashes with as many cells,
 * and the rows down to the first empty line or the next block.
 *
 * Source: GitHub Flavored Markdown Spec 0.29-gfm, section 4.10.
 */
export function findTable(text: string, place: SourceRange): Table | undefined {
  const lines = linesWithin(text, place);
  let open: string | undefined;
  for (let index = 0; index + 1 < lines.length; index += 1) {
    const [line, next] = [lines[index], lines[index + 1]];
    if (!line || !next) break;
    if (open !== undefined) {
      const closes = open === '-->' ? line.words.includes(open) : line.words.trim().startsWith(open);
      if (closes) open = undefined;
      continue;
    }
    const mark = fence.exec(line.words)?.[1];
    const comment = /^ {0,3}<!--/.test(line.words) && !line.words.includes('-->');
    open = mark ?? (comment ? '-->' : undefined);
    if (open !== undefined || beginsOther.test(line.words) || indentedCode.test(line.words)) continue;
    if (isBlankOrPipe(line.words) || !(line.words + next.words).includes('|')) continue;
    const [header, delimiters] = [cellsOf(text, line), cellsOf(text, next)];
    if (header.length !== delimiters.length || !isDelimiterRow(delimiters)) continue;
    return { header, rows: rowsBelow(text, lines.slice(index + 2), header.length) };
  }
  return undefined;
}

function rowsBelow(text: string, lines: readonly Line[], width: number): Table['rows'] {
  const end = lines.findIndex(
    ({ words }) => words.trim() === '' || beginsOther.test(words) || indentedCode.test(words),
  );
  return (end < 0 ? lines : lines.slice(0, end)).map((line) => {
    const cells = cellsOf(text, line).slice(0, width);
    const empty: TableCell = { value: '', range: { start: line.end, end: line.end } };
    return [...cells, ...Array.from({ length: width - cells.length }, () => empty)];
  });
}
