import type { SourceRange } from '../../notation/source-range';

/** One line of a calendar file as RFC 5545, section 3.1, counts it: its folded pieces joined. */
export interface ContentLine {
  readonly text: string;
  /** From its first character to its last in the file, line ending left out. */
  readonly range: SourceRange;
}

/**
 * The content lines of a calendar file, empty ones left out. A line that begins with a space or a tab goes on with
 * the line before it; LF alone and CR alone end a line as well as CRLF.
 */
export function contentLines(text: string): readonly ContentLine[] {
  const lines: ContentLine[] = [];
  let pieces: string[] = [];
  let start = 0;
  let end = 0;
  const finish = () => {
    if (pieces.length > 0) lines.push({ text: pieces.join(''), range: { start, end } });
    pieces = [];
  };
  for (const { 0: line, index } of text.matchAll(/[^\r\n]+/g)) {
    const isFolded = line[0] === ' ' || line[0] === '\t';
    if (isFolded && pieces.length > 0) {
      pieces.push(line.slice(1));
    } else if (line.trim() !== '') {
      finish();
      pieces.push(line);
      start = index;
    }
    if (pieces.length > 0) end = index + line.length;
  }
  finish();
  return lines;
}
