import { asterisk, backtick, hash, hyphen, isBlank, space, tab, tilde, underscore } from './characters';

// Blocks that their first line makes what they are. Each is asked at the first character that is no blank, and
// looks no further than the end of that line.

function isBlankFrom(text: string, offset: number, end: number): boolean {
  let at = offset;
  while (at < end && isBlank(text.charCodeAt(at))) at += 1;
  return at === end;
}

/** Offset behind the run of the character at `offset`. */
export function runEnd(text: string, offset: number, end: number): number {
  const unit = text.charCodeAt(offset);
  let at = offset + 1;
  while (at < end && text.charCodeAt(at) === unit) at += 1;
  return at;
}

/**
 * Whether the rest of a line is a thematic break: at least three `*`, `-` or `_`, all the same, and blanks. How far
 * the tail of such a line reaches back is remembered, because a line of many list markers asks at each of them.
 */
export class ThematicBreaks {
  private lineEnd = -1;
  private marker = 0;
  private tailStart = 0;

  constructor(private readonly text: string) {}

  isAt(offset: number, end: number): boolean {
    const marker = this.text.charCodeAt(offset);
    if (marker !== asterisk && marker !== hyphen && marker !== underscore) return false;
    if (this.lineEnd !== end || this.marker !== marker) {
      this.lineEnd = end;
      this.marker = marker;
      this.tailStart = end;
    }
    while (this.tailStart > offset && this.isPart(this.text.charCodeAt(this.tailStart - 1)))
      this.tailStart -= 1;
    return this.tailStart <= offset && this.hasThree(offset, end);
  }

  private isPart(unit: number): boolean {
    return unit === this.marker || unit === space || unit === tab;
  }

  private hasThree(offset: number, end: number): boolean {
    let count = 0;
    for (let at = offset; at < end && count < 3; at += 1)
      if (this.text.charCodeAt(at) === this.marker) count += 1;
    return count === 3;
  }
}

/** The depth of an ATX heading, 1 to 6, or 0 when there is none. */
export function atxDepth(text: string, offset: number, end: number): number {
  const behind = runEnd(text, offset, end);
  const depth = behind - offset;
  return depth <= 6 && (behind === end || isBlank(text.charCodeAt(behind))) ? depth : 0;
}

/** The words of an ATX heading, from the first to the last, closing marks left out. */
export function atxWords(text: string, offset: number, end: number): { start: number; end: number } {
  let start = runEnd(text, offset, end);
  while (start < end && isBlank(text.charCodeAt(start))) start += 1;
  let last = end;
  while (last > start && isBlank(text.charCodeAt(last - 1))) last -= 1;
  let marks = last;
  while (marks > start && text.charCodeAt(marks - 1) === hash) marks -= 1;
  if (marks === last || (marks > start && !isBlank(text.charCodeAt(marks - 1)))) return { start, end: last };
  while (marks > start && isBlank(text.charCodeAt(marks - 1))) marks -= 1;
  return { start, end: marks };
}

/** Whether the line is the line under a setext heading. */
export function isSetextUnderline(text: string, offset: number, end: number): boolean {
  return isBlankFrom(text, runEnd(text, offset, end), end);
}

/** The length of an opening code fence, or 0 when there is none. */
export function fenceLength(text: string, offset: number, end: number): number {
  const unit = text.charCodeAt(offset);
  if (unit !== backtick && unit !== tilde) return 0;
  const behind = runEnd(text, offset, end);
  if (behind - offset < 3) return 0;
  if (unit === backtick)
    for (let at = behind; at < end; at += 1) if (text.charCodeAt(at) === backtick) return 0;
  return behind - offset;
}

/** Whether the line closes a fence of `length` of the character `marker`. */
export function closesFence(
  text: string,
  offset: number,
  end: number,
  marker: number,
  length: number,
): boolean {
  if (offset === end || text.charCodeAt(offset) !== marker) return false;
  const behind = runEnd(text, offset, end);
  return behind - offset >= length && isBlankFrom(text, behind, end);
}
