/** A half-open range of UTF-16 code units in the text of one note. */
export interface SourceRange {
  readonly start: number;
  readonly end: number;
}

/** A value together with the exact characters it was read from. */
export interface Located<T> {
  readonly value: T;
  readonly range: SourceRange;
}

/** Zero-based line and UTF-16 column, as editors count them. */
export interface LineColumn {
  readonly line: number;
  readonly column: number;
}

/**
 * Offsets at which the lines of `text` begin; the first is always 0.
 * LF, CRLF and a lone CR each end a line.
 */
export function lineStarts(text: string): readonly number[] {
  const starts = [0];
  for (let index = 0; index < text.length; index += 1) {
    const unit = text.charCodeAt(index);
    if (unit === 13 && text.charCodeAt(index + 1) === 10) index += 1;
    if (unit === 10 || unit === 13) starts.push(index + 1);
  }
  return starts;
}

/** The line and column of `offset`, by binary search in the line starts of its text. */
export function lineColumnAt(starts: readonly number[], offset: number): LineColumn {
  let low = 0;
  let high = starts.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if ((starts[middle] ?? 0) <= offset) low = middle;
    else high = middle - 1;
  }
  return { line: low, column: offset - (starts[low] ?? 0) };
}

/** Whether `offset` lies in `range`, its end included, as a cursor behind the last character does. */
export function touches(range: SourceRange, offset: number): boolean {
  return offset >= range.start && offset <= range.end;
}
