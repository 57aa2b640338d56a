import { backslash, closeBracket, isBlank, lineFeed, openBracket, tab } from './characters';
import type { Content } from './content';

/** CommonMark 0.31.2, section 4.7: a label has at most 999 characters between its brackets; line endings are free. */
const longestLabel = 999;

/** A tab counts as its columns, of which there are at most four. */
const widestTab = 4;

function isEscapedByBackslash(unit: number): boolean {
  return unit === openBracket || unit === backslash || unit === closeBracket;
}

/** Columns that the tabs in a label take beyond one each. */
function extraColumns(content: Content, start: number, end: number): number {
  const { text } = content;
  let extra = 0;
  for (let at = text.indexOf('\t', start); at >= 0 && at < end; at = text.indexOf('\t', at + 1))
    extra += content.tabWidth(at) - 1;
  return extra;
}

/** Position behind the label whose `[` stands at `position`, or -1 when there is none. */
export function labelEnd(content: Content, position: number): number {
  const { text } = content;
  let size = 0;
  let tabs = 0;
  let hasWords = false;
  for (let at = position + 1; at < text.length && size <= longestLabel; at += 1) {
    const unit = text.charCodeAt(at);
    if (unit === openBracket) return -1;
    if (unit === closeBracket) {
      if (!hasWords) return -1;
      const isSurelyShort = size + tabs * (widestTab - 1) <= longestLabel;
      return isSurelyShort || size + extraColumns(content, position, at) <= longestLabel ? at + 1 : -1;
    }
    if (unit === lineFeed) continue;
    size += 1;
    if (unit === tab) tabs += 1;
    if (!isBlank(unit)) hasWords = true;
    if (unit === backslash && isEscapedByBackslash(text.charCodeAt(at + 1))) {
      at += 1;
      size += 1;
    }
  }
  return -1;
}

/** Position of the first bracket at or behind `position` that no backslash escapes, or the end of the text. */
export function nextBracket(text: string, position: number): number {
  let at = position;
  while (at < text.length) {
    const unit = text.charCodeAt(at);
    if (unit === openBracket || unit === closeBracket) return at;
    at += unit === backslash && isEscapedByBackslash(text.charCodeAt(at + 1)) ? 2 : 1;
  }
  return at;
}

/** A label's words in the form in which labels match: case and the width of blanks make no difference. */
export function normalizedLabel(words: string): string {
  return words
    .replace(/[\t\n ]+/g, ' ')
    .replace(/^ | $/g, '')
    .toLowerCase()
    .toUpperCase();
}
