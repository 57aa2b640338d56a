import {
  apostrophe,
  at as atSign,
  backtick,
  colon,
  dot,
  equals,
  exclamation,
  greater,
  hyphen,
  isAlphanumeric,
  isControl,
  isLetter,
  isWhitespace,
  less,
  openBracket,
  plus,
  question,
  quotation,
  slash,
  underscore,
} from './characters';

/** States of reading an opening tag behind its name; each is a bit. */
const between = 1;
const inName = 2;
const afterName = 4;
const beforeValue = 8;
const inUnquoted = 16;
const inSingleQuotes = 32;
const inDoubleQuotes = 64;
const afterQuotes = 128;

/** So many characters are read before the reader starts to remember where it failed. */
const freeSteps = 64;

function isNameStart(unit: number): boolean {
  return isLetter(unit) || unit === colon || unit === underscore;
}

function isInName(unit: number): boolean {
  return isAlphanumeric(unit) || unit === hyphen || unit === dot || unit === colon || unit === underscore;
}

function stateBetween(unit: number): number {
  if (isWhitespace(unit)) return between;
  return isNameStart(unit) ? inName : 0;
}

function stateAfterName(unit: number): number {
  if (unit === equals) return beforeValue;
  return isWhitespace(unit) ? afterName : stateBetween(unit);
}

function stateBeforeValue(unit: number): number {
  if (isWhitespace(unit)) return beforeValue;
  if (unit === quotation) return inDoubleQuotes;
  if (unit === apostrophe) return inSingleQuotes;
  return unit === less || unit === equals || unit === greater || unit === backtick ? 0 : inUnquoted;
}

function stateInUnquoted(unit: number): number {
  if (isWhitespace(unit)) return between;
  const isForbidden =
    unit === quotation || unit === apostrophe || unit === less || unit === equals || unit === backtick;
  return isForbidden ? 0 : inUnquoted;
}

/** The state behind the character `unit`; 0 when no tag can have it there. `/` and `>` are asked before. */
function nextState(state: number, unit: number): number {
  switch (state) {
    case between:
      return stateBetween(unit);
    case inName:
      return isInName(unit) ? inName : stateAfterName(unit);
    case afterName:
      return stateAfterName(unit);
    case beforeValue:
      return stateBeforeValue(unit);
    case inUnquoted:
      return stateInUnquoted(unit);
    case inSingleQuotes:
      return unit === apostrophe ? afterQuotes : inSingleQuotes;
    case inDoubleQuotes:
      return unit === quotation ? afterQuotes : inDoubleQuotes;
    default:
      return isWhitespace(unit) ? between : 0;
  }
}

/** States in which `/` or `>` ends the tag. */
const endable = between | inName | afterName | inUnquoted | afterQuotes;

/**
 * Reads what stands between angle brackets in a text whose lines are joined by line feeds: HTML and autolinks, CommonMark
 * 0.31.2, sections 6.5 and 6.6. What failed once is remembered, so that all calls together take steps in proportion
 * to the text.
 */
export class AngleBrackets {
  /** For each closing mark, a position behind which it is known not to stand. */
  private readonly absentFrom = new Map<string, number>();
  /** For each position, the states of an opening tag from which no `>` was reached. */
  private failed: Uint8Array | undefined;

  constructor(private readonly text: string) {}

  /** Position behind the autolink that starts at `position`, or -1. */
  autolinkEnd(position: number): number {
    const first = this.text.charCodeAt(position + 1);
    if (isLetter(first)) {
      const end = this.addressEnd(position + 1);
      if (end >= 0) return end;
    }
    return this.mailEnd(position + 1);
  }

  /** Position behind the tag, comment, instruction, declaration or section that starts at `position`, or -1. */
  htmlEnd(position: number): number {
    const unit = this.text.charCodeAt(position + 1);
    if (unit === question) return this.behindNext('?>', position + 2);
    if (unit === slash) return this.closingTagEnd(position + 2);
    if (isLetter(unit)) return this.openingTagEnd(position + 1);
    if (unit !== exclamation) return -1;
    const mark = this.text.charCodeAt(position + 2);
    if (isLetter(mark)) return this.behindNext('>', position + 3);
    // `<!-->` and `<!--->` are comments, so the search begins at the first hyphen.
    if (mark === hyphen)
      return this.text.charCodeAt(position + 3) === hyphen ? this.behindNext('-->', position + 2) : -1;
    return mark === openBracket && this.text.startsWith('CDATA[', position + 3)
      ? this.behindNext(']]>', position + 9)
      : -1;
  }

  private behindNext(mark: string, from: number): number {
    if (from >= (this.absentFrom.get(mark) ?? Number.POSITIVE_INFINITY)) return -1;
    const found = this.text.indexOf(mark, from);
    if (found >= 0) return found + mark.length;
    this.absentFrom.set(mark, from);
    return -1;
  }

  /** A scheme of 2 to 32 characters, a colon, and anything but blanks, control characters and `<`. */
  private addressEnd(start: number): number {
    const { text } = this;
    let at = start + 1;
    while (at - start < 32 && this.isInScheme(text.charCodeAt(at))) at += 1;
    if (at - start < 2 || text.charCodeAt(at) !== colon) return -1;
    for (at += 1; at < text.length; at += 1) {
      const unit = text.charCodeAt(at);
      if (unit === greater) return at + 1;
      if (unit === less || unit === 0x20 || isControl(unit)) return -1;
    }
    return -1;
  }

  private isInScheme(unit: number): boolean {
    return isAlphanumeric(unit) || unit === plus || unit === hyphen || unit === dot;
  }

  private mailEnd(start: number): number {
    const { text } = this;
    let at = start;
    while (isInMailName(text.charCodeAt(at))) at += 1;
    if (at === start || text.charCodeAt(at) !== atSign) return -1;
    for (;;) {
      at += 1;
      const label = at;
      while (at - label < 63 && (isAlphanumeric(text.charCodeAt(at)) || text.charCodeAt(at) === hyphen))
        at += 1;
      const isLabel =
        at > label && isAlphanumeric(text.charCodeAt(label)) && isAlphanumeric(text.charCodeAt(at - 1));
      if (!isLabel) return -1;
      if (text.charCodeAt(at) === greater) return at + 1;
      if (text.charCodeAt(at) !== dot) return -1;
    }
  }

  private nameEnd(position: number): number {
    let at = position + 1;
    while (isAlphanumeric(this.text.charCodeAt(at)) || this.text.charCodeAt(at) === hyphen) at += 1;
    return at;
  }

  private closingTagEnd(position: number): number {
    if (!isLetter(this.text.charCodeAt(position))) return -1;
    let at = this.nameEnd(position);
    while (isWhitespace(this.text.charCodeAt(at))) at += 1;
    return this.text.charCodeAt(at) === greater ? at + 1 : -1;
  }

  private openingTagEnd(position: number): number {
    const { text } = this;
    const start = this.nameEnd(position);
    let state = between;
    // Behind the name only a blank can begin an attribute.
    const first = text.charCodeAt(start);
    if (first !== slash && first !== greater && !isWhitespace(first)) return -1;
    for (let at = start; at < text.length && state !== 0; at += 1) {
      if (at - start > freeSteps && this.hasFailed(at, state)) return -1;
      const unit = text.charCodeAt(at);
      if ((state & endable) !== 0) {
        if (unit === greater) return at + 1;
        if (unit === slash) return text.charCodeAt(at + 1) === greater ? at + 2 : -1;
      }
      state = nextState(state, unit);
    }
    return -1;
  }

  /** Whether a tag failed here in the same state before; if not, this one counts as failed unless it ends. */
  private hasFailed(position: number, state: number): boolean {
    this.failed ??= new Uint8Array(this.text.length);
    const known = this.failed[position] ?? 0;
    if ((known & state) !== 0) return true;
    this.failed[position] = known | state;
    return false;
  }
}

/** What may stand before the `@` of an address: the characters of RFC 5322's `atext`. */
function isInMailName(unit: number): boolean {
  return (
    isAlphanumeric(unit) ||
    (unit >= 0x23 && unit <= 0x27) ||
    unit === 0x2a ||
    unit === plus ||
    unit === hyphen ||
    unit === dot ||
    unit === slash ||
    unit === equals ||
    unit === question ||
    (unit >= 0x5e && unit <= 0x60) ||
    (unit >= 0x7b && unit <= 0x7e)
  );
}
