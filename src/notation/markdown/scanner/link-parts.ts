import {
  apostrophe,
  backslash,
  closeParenthesis,
  greater,
  isControl,
  isWhitespace,
  less,
  lineFeed,
  openParenthesis,
  quotation,
  space,
} from './characters';

// Parts of links and link reference definitions in text whose lines are joined by line feeds. Each function gives
// the position behind the part, or -1 when it is not there.

/** Position of the first character at or behind `position` that is no whitespace. */
export function skipWhitespace(text: string, position: number): number {
  let at = position;
  while (isWhitespace(text.charCodeAt(at))) at += 1;
  return at;
}

function enclosedEnd(text: string, position: number): number {
  for (let at = position + 1; at < text.length; at += 1) {
    const unit = text.charCodeAt(at);
    if (unit === greater) return at + 1;
    if (unit === less || unit === lineFeed) return -1;
    if (unit !== backslash) continue;
    const escaped = text.charCodeAt(at + 1);
    if (escaped === less || escaped === greater || escaped === backslash) at += 1;
  }
  return -1;
}

/** A destination, in angle brackets or with at most `deepest` parentheses in one another. */
export function destinationEnd(text: string, position: number, deepest: number): number {
  if (position >= text.length) return -1;
  if (text.charCodeAt(position) === less) return enclosedEnd(text, position);
  let depth = 0;
  for (let at = position; ; at += 1) {
    const isEnd = at >= text.length;
    const unit = isEnd ? lineFeed : text.charCodeAt(at);
    if (depth === 0 && (unit === closeParenthesis || isWhitespace(unit))) return at > position ? at : -1;
    if (unit === openParenthesis) {
      if (depth === deepest) return -1;
      depth += 1;
    } else if (unit === closeParenthesis) depth -= 1;
    else if (unit === space || isControl(unit)) return -1;
    else if (unit === backslash) {
      const escaped = text.charCodeAt(at + 1);
      if (escaped === openParenthesis || escaped === closeParenthesis || escaped === backslash) at += 1;
    }
  }
}

/** The mark that closes a title which opens with `unit`, or 0. */
export function titleCloser(unit: number): number {
  if (unit === openParenthesis) return closeParenthesis;
  return unit === quotation || unit === apostrophe ? unit : 0;
}

/** A title whose words begin at `position`. */
export function titleEnd(text: string, position: number, closer: number): number {
  for (let at = position; at < text.length; at += 1) {
    const unit = text.charCodeAt(at);
    if (unit === closer) return at + 1;
    if (unit !== backslash) continue;
    const escaped = text.charCodeAt(at + 1);
    if (escaped === closer || escaped === backslash) at += 1;
  }
  return -1;
}
