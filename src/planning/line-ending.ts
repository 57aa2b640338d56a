/** The three ways in which a line of a note can end. */
export type LineEnding = '\n' | '\r\n' | '\r';

/** The line ending that `text` uses most, the earlier one on a tie; `undefined` for a single line. */
export function lineEndingOf(text: string): LineEnding | undefined {
  const counts = new Map<string, number>();
  for (const [ending] of text.matchAll(/\r\n|\n|\r/g)) counts.set(ending, (counts.get(ending) ?? 0) + 1);
  let most: string | undefined;
  for (const [ending, count] of counts) {
    if (most === undefined || count > (counts.get(most) ?? 0)) most = ending;
  }
  return most as LineEnding | undefined;
}

/** `text`, written with any line endings, with `ending` at every one. */
export function withLineEnding(text: string, ending: LineEnding): string {
  return text.replace(/\r\n|\n|\r/g, ending);
}

/** The lines of `text` without their endings; a final line ending gives no empty last line. */
export function linesOf(text: string): readonly string[] {
  const lines = text.split(/\r\n|\n|\r/);
  if (lines.length > 1 && lines[lines.length - 1] === '') lines.pop();
  return lines;
}

/** Offset of the end of the line that holds `offset`, its line ending left out. */
export function endOfLine(text: string, offset: number): number {
  let end = offset;
  while (end < text.length && text[end] !== '\n' && text[end] !== '\r') end += 1;
  return end;
}

/** Offset of the start of the line that holds `offset`. */
export function startOfLine(text: string, offset: number): number {
  let start = offset;
  while (start > 0 && text[start - 1] !== '\n' && text[start - 1] !== '\r') start -= 1;
  return start;
}
