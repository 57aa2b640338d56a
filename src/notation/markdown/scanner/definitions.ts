import { colon, isBlank, lineFeed, openBracket } from './characters';
import type { Content } from './content';
import { labelEnd, normalizedLabel } from './labels';
import { destinationEnd, skipWhitespace, titleCloser, titleEnd } from './link-parts';

function isLineEnd(text: string, position: number): boolean {
  return position >= text.length || text.charCodeAt(position) === lineFeed;
}

function skipBlanks(text: string, position: number): number {
  let at = position;
  while (isBlank(text.charCodeAt(at))) at += 1;
  return at;
}

/** Position of the line end behind the title that may follow a destination, or -1. */
function titleLineEnd(text: string, position: number): number {
  const start = skipWhitespace(text, position);
  if (start === position) return -1;
  const closer = titleCloser(text.charCodeAt(start));
  const end = closer === 0 ? -1 : titleEnd(text, start + 1, closer);
  if (end < 0) return -1;
  const behind = skipBlanks(text, end);
  return isLineEnd(text, behind) ? behind : -1;
}

/** Position of the line end behind the definition whose label ends at `afterLabel`, or -1. */
function definitionEnd(text: string, afterLabel: number): number {
  if (afterLabel < 0 || text.charCodeAt(afterLabel) !== colon) return -1;
  const destination = destinationEnd(text, skipWhitespace(text, afterLabel + 1), Number.POSITIVE_INFINITY);
  if (destination < 0) return -1;
  const withTitle = titleLineEnd(text, destination);
  if (withTitle >= 0) return withTitle;
  const behind = skipBlanks(text, destination);
  return isLineEnd(text, behind) ? behind : -1;
}

/**
 * Passes the link reference definitions at the head of a block (CommonMark 0.31.2, section 4.7) and adds their labels
 * to `labels`.
 * @returns the position at which the words of the paragraph begin; behind the text when there are none
 */
export function passDefinitions(content: Content, labels: Set<string>): number {
  const { text } = content;
  let position = 0;
  while (text.charCodeAt(position) === openBracket) {
    const afterLabel = labelEnd(content, position);
    const end = definitionEnd(text, afterLabel);
    if (end < 0) return position;
    labels.add(normalizedLabel(text.slice(position + 1, afterLabel - 1)));
    position = end < text.length ? skipBlanks(text, end + 1) : text.length + 1;
  }
  return position;
}
