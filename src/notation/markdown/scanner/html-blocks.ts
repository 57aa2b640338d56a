import {
  apostrophe,
  backtick,
  closeBracket,
  colon,
  dot,
  equals,
  exclamation,
  greater,
  hyphen,
  isAlphanumeric,
  isBlank,
  isLetter,
  less,
  openBracket,
  question,
  quotation,
  slash,
  underscore,
} from './characters';

/** The seven kinds of HTML block of CommonMark 0.31.2, section 4.6, by what starts and ends them. */
export type HtmlKind = 1 | 2 | 3 | 4 | 5 | 6 | 7;

/** An HTML block that starts on a line. */
export interface HtmlStart {
  readonly kind: HtmlKind;
  /** From where the line is searched for the block's end. */
  readonly searchFrom: number;
}

const rawNames = new Set(['pre', 'script', 'style', 'textarea']);

/** CommonMark 0.31.2, section 4.6, start condition 6. */
const blockNames = new Set(
  (
    'address article aside base basefont blockquote body caption center col colgroup dd details dialog dir div dl ' +
    'dt fieldset figcaption figure footer form frame frameset h1 h2 h3 h4 h5 h6 head header hr html iframe legend ' +
    'li link main menu menuitem nav noframes ol optgroup option p param search section summary table tbody td ' +
    'tfoot th thead title tr track ul'
  ).split(' '),
);

/** Longer than any name that makes a block of kind 1 or 6. */
const longestName = 10;

function skipBlanks(text: string, offset: number, end: number): number {
  let at = offset;
  while (at < end && isBlank(text.charCodeAt(at))) at += 1;
  return at;
}

function isNameStart(unit: number): boolean {
  return isLetter(unit) || unit === colon || unit === underscore;
}

function isInName(unit: number): boolean {
  return isAlphanumeric(unit) || unit === colon || unit === underscore || unit === hyphen || unit === dot;
}

/** Whether `>` and then only blanks stand at `offset`. */
function closesLine(text: string, offset: number, end: number): boolean {
  return offset < end && text.charCodeAt(offset) === greater && skipBlanks(text, offset + 1, end) === end;
}

function endsUnquoted(unit: number): boolean {
  return (
    isBlank(unit) ||
    unit === quotation ||
    unit === apostrophe ||
    unit === slash ||
    unit === less ||
    unit === equals ||
    unit === greater ||
    unit === backtick
  );
}

/** Offset behind an attribute's value, or -1. */
function valueEnd(text: string, offset: number, end: number): number {
  let at = skipBlanks(text, offset, end);
  if (at === end) return -1;
  const unit = text.charCodeAt(at);
  if (unit === less || unit === equals || unit === greater || unit === backtick) return -1;
  if (unit !== quotation && unit !== apostrophe) {
    while (at < end && !endsUnquoted(text.charCodeAt(at))) at += 1;
    return at;
  }
  at += 1;
  while (at < end && text.charCodeAt(at) !== unit) at += 1;
  if (at === end) return -1;
  const behind = at + 1 < end ? text.charCodeAt(at + 1) : Number.NaN;
  return behind === slash || behind === greater || isBlank(behind) ? at + 1 : -1;
}

/** Offset behind the values of the attribute whose name ends at `offset`, or -1; after one without quotes may come another. */
function valuesEnd(text: string, offset: number, end: number): number {
  let at = offset;
  for (;;) {
    const sign = skipBlanks(text, at, end);
    if (sign === end || text.charCodeAt(sign) !== equals) return at;
    at = valueEnd(text, sign + 1, end);
    if (at < 0) return -1;
    const last = text.charCodeAt(at - 1);
    if (last === quotation || last === apostrophe) return at;
  }
}

/** Whether attributes, `>` and nothing else fill the line from `offset`. */
function isOpenTag(text: string, offset: number, end: number): boolean {
  let at = offset;
  for (;;) {
    at = skipBlanks(text, at, end);
    if (at === end) return false;
    const unit = text.charCodeAt(at);
    if (unit === slash) return closesLine(text, at + 1, end);
    if (!isNameStart(unit)) return closesLine(text, at, end);
    while (at < end && isInName(text.charCodeAt(at))) at += 1;
    at = valuesEnd(text, at, end);
    if (at < 0) return false;
  }
}

function tagStart(
  text: string,
  offset: number,
  end: number,
  onlyInterrupting: boolean,
): HtmlStart | undefined {
  const isClosing = text.charCodeAt(offset) === slash;
  const nameStart = isClosing ? offset + 1 : offset;
  let at = nameStart;
  if (at >= end || !isLetter(text.charCodeAt(at))) return undefined;
  while (at < end && (isAlphanumeric(text.charCodeAt(at)) || text.charCodeAt(at) === hyphen)) at += 1;
  const behind = at < end ? text.charCodeAt(at) : Number.NaN;
  if (at < end && behind !== slash && behind !== greater && !isBlank(behind)) return undefined;
  const name = at - nameStart > longestName ? '' : text.slice(nameStart, at).toLowerCase();
  if (behind !== slash && !isClosing && rawNames.has(name)) return { kind: 1, searchFrom: at };
  if (blockNames.has(name)) {
    if (behind !== slash) return { kind: 6, searchFrom: at };
    return text.charCodeAt(at + 1) === greater && at + 1 < end ? { kind: 6, searchFrom: at } : undefined;
  }
  if (onlyInterrupting) return undefined;
  const complete = isClosing ? closesLine(text, skipBlanks(text, at, end), end) : isOpenTag(text, at, end);
  return complete ? { kind: 7, searchFrom: at } : undefined;
}

/**
 * The HTML block that starts with the `<` at `offset`.
 * @param onlyInterrupting Leave out kind 7, which cannot interrupt a paragraph.
 */
export function htmlStart(
  text: string,
  offset: number,
  end: number,
  onlyInterrupting: boolean,
): HtmlStart | undefined {
  if (offset + 1 >= end) return undefined;
  const unit = text.charCodeAt(offset + 1);
  if (unit === question) return { kind: 3, searchFrom: offset + 1 };
  if (unit !== exclamation) return tagStart(text, offset + 1, end, onlyInterrupting);
  if (offset + 2 >= end) return undefined;
  const mark = text.charCodeAt(offset + 2);
  if (isLetter(mark)) return { kind: 4, searchFrom: offset + 3 };
  if (mark === hyphen)
    return offset + 3 < end && text.charCodeAt(offset + 3) === hyphen
      ? { kind: 2, searchFrom: offset + 2 }
      : undefined;
  return mark === openBracket && offset + 9 <= end && text.slice(offset + 3, offset + 9) === 'CDATA['
    ? { kind: 5, searchFrom: offset + 9 }
    : undefined;
}

const endings: Readonly<Record<1 | 2 | 3 | 4, RegExp>> = {
  1: /<\/(?:pre|script|style|textarea)>/i,
  2: /-->/,
  3: /\?>/,
  4: />/,
};

/** Two brackets are a pair, so `]]>` closes and `]]]>` does not, as in the tree's parser. */
function closesCharacterData(text: string, offset: number, end: number): boolean {
  let at = offset;
  while (at + 2 < end) {
    if (text.charCodeAt(at) !== closeBracket) at += 1;
    else if (text.charCodeAt(at + 1) !== closeBracket) at += 2;
    else if (text.charCodeAt(at + 2) === greater) return true;
    else at += 2;
  }
  return false;
}

/** Whether the block of `kind` ends on a line, which is searched from `offset`; kinds 6 and 7 end at a blank line. */
export function closesHtml(text: string, offset: number, end: number, kind: HtmlKind): boolean {
  if (kind === 6 || kind === 7) return false;
  if (kind === 5) return closesCharacterData(text, offset, end);
  return endings[kind].test(text.slice(offset, end));
}
