import type { TagName } from './entries';
import { cutFields, type FieldToken, visibleText } from './field-tokens';
import { isWord, looksLikeNumber } from './field-values';
import type { MarkdownReader, TextLine } from './markdown/markdown-reader';
import { scanLines } from './markdown/scan-lines';
import type { SourceRange } from './source-range';
import { holdsFreeWords, listFields, tagFields } from './tag-fields';
import { isTagName } from './tags/tag-readers';

/** The cursor stands in or behind `#` and the name of a tag. */
export interface TagNameContext {
  readonly place: 'tag-name';
  /** `#` and what follows it up to the next blank. */
  readonly range: SourceRange;
  /** From `#` to the cursor. */
  readonly typed: string;
  /** Whether the line opens a list item, and whether that has a task box. */
  readonly item: 'none' | 'item' | 'task';
  /** Whether nothing but blanks stands behind the name. */
  readonly alone: boolean;
}

/** The cursor stands behind a tag's name, where a field is or can be. */
export interface FieldContext {
  readonly place: 'field';
  readonly tag: TagName;
  /**
   * The characters that another field or value would replace: a whole unnamed field, the value of a named one, one of
   * several values between commas; empty between two fields.
   */
  readonly range: SourceRange;
  /** From the start of `range` to the cursor. */
  readonly typed: string;
  /** The name of the named field in whose value the cursor stands. */
  readonly name?: string;
  /** Whether the value stands in quotation marks. */
  readonly quoted: boolean;
  /** Whether another field begins at the cursor, without a blank between. */
  readonly beforeField: boolean;
  /** The other values of the same list. */
  readonly taken: readonly string[];
  /** All other fields of the tag, in the order of the text. */
  readonly fields: readonly FieldToken[];
  /** Words of the tag that stand before the cursor, flags and numbers left out. */
  readonly wordsBefore: readonly string[];
}

/** Where the cursor stands in a tag. */
export type CursorContext = TagNameContext | FieldContext;

/** Marks of quotes, lists and tasks, then `#`. */
const tagStart = /^\ufeff?[ \t>*+\-0-9.)[\]xX]*?#/;

/**
 * The start of the tag in the line up to the cursor, or `undefined` when the line cannot hold one there. Costs next
 * to nothing, so that it can be asked at each keystroke.
 * @param before The line's characters before the cursor.
 */
export function possibleTagStart(before: string): number | undefined {
  const match = tagStart.exec(before);
  if (!match) return undefined;
  const rest = before.slice(match[0].length);
  return rest === '' || /^\p{L}/u.test(rest) ? match[0].length - 1 : undefined;
}

function sourceLineAround(text: string, offset: number): SourceRange {
  let start = offset;
  let end = offset;
  while (start > 0 && !/[\r\n]/.test(text[start - 1] ?? '')) start -= 1;
  while (end < text.length && !/[\r\n]/.test(text[end] ?? '')) end += 1;
  return { start, end };
}

/**
 * The text line whose tag begins at `hash`. A lone `#` is an empty heading for Markdown, so it is read as if the
 * first letter stood there already.
 */
function textLineAt(
  text: string,
  hash: number,
  line: SourceRange,
  markdown: MarkdownReader,
): TextLine | undefined {
  const alone = text.slice(hash + 1, line.end).trim() === '';
  const probe = alone ? `${text.slice(0, hash + 1)}x${text.slice(hash + 1)}` : text;
  return markdown(probe).lines.find((one) => one.range.start === hash);
}

/** One value of a comma-separated list, and the others. */
function listPart(
  value: string,
  start: number,
  offset: number,
): { readonly range: SourceRange; readonly taken: readonly string[] } {
  const parts = value.split(',');
  const taken: string[] = [];
  let range: SourceRange | undefined;
  let from = start;
  for (const part of parts) {
    const end = from + part.length;
    if (!range && offset <= end) range = { start: from, end };
    else if (part !== '') taken.push(part);
    from = end + 1;
  }
  return { range: range ?? { start: offset, end: offset }, taken };
}

interface Place {
  readonly range: SourceRange;
  readonly name?: string;
  readonly quoted: boolean;
  readonly beforeField: boolean;
  readonly taken: readonly string[];
  /** The field in which the cursor stands. */
  readonly token?: FieldToken;
}

function placeIn(token: FieldToken, offset: number): Place {
  const name = token.name?.value;
  if (name === undefined || offset < token.value.range.start) {
    return { range: token.range, quoted: token.quoted, beforeField: false, taken: [], token };
  }
  const { value, range } = token.value;
  if (token.quoted || !listFields.has(name)) {
    return { range, name, quoted: token.quoted, beforeField: false, taken: [], token };
  }
  return { ...listPart(value, range.start, offset), name, quoted: false, beforeField: false, token };
}

/** Where in a tag's fields the cursor stands; `undefined` in the remark. */
function placeAt(
  text: string,
  fields: readonly FieldToken[],
  start: number,
  offset: number,
): Place | undefined {
  const within = fields.find((one) => one.range.start < offset && offset <= one.range.end);
  const open = fields.find((one) => one.unclosed && one.name && one.range.end < offset);
  if (open?.name) {
    const range = { start: open.value.range.start, end: offset };
    return { range, name: open.name.value, quoted: true, beforeField: false, taken: [], token: open };
  }
  if (within) return placeIn(within, offset);
  const before = fields.filter((one) => one.range.end < offset).at(-1);
  if (text.slice(before?.range.end ?? start, offset).trim() !== '') return undefined;
  const beforeField = fields.some((one) => one.range.start === offset);
  return { range: { start: offset, end: offset }, quoted: false, beforeField, taken: [] };
}

/**
 * Says where in a tag of `text` the cursor at `offset` stands, half-written tags included; `undefined` where it
 * stands in no tag, in a tag's remark, or in its free words.
 * @param markdown Decides which lines are ordinary text.
 */
export function cursorContext(
  text: string,
  offset: number,
  markdown: MarkdownReader = scanLines,
): CursorContext | undefined {
  const source = sourceLineAround(text, offset);
  const column = possibleTagStart(text.slice(source.start, offset));
  if (column === undefined) return undefined;
  const hash = source.start + column;
  const line = textLineAt(text, hash, source, markdown);
  if (!line || line.hidden.some((one) => one.start < offset && offset < one.end)) return undefined;
  const visible = visibleText(text, { start: hash, end: source.end }, line.hidden);
  const written = /^#[^\s—]*/u.exec(visible)?.[0] ?? '#';
  const nameEnd = hash + written.length;
  if (offset <= nameEnd) {
    const item = line.item ? (line.item.task ? 'task' : 'item') : 'none';
    return {
      place: 'tag-name',
      range: { start: hash, end: nameEnd },
      typed: text.slice(hash, offset),
      item,
      alone: visible.slice(written.length).trim() === '',
    };
  }
  const tag = written.slice(1);
  if (!isTagName(tag) || holdsFreeWords(tag)) return undefined;
  const all = cutFields(visible.slice(written.length), nameEnd).fields;
  const place = placeAt(text, all, nameEnd, offset);
  if (!place) return undefined;
  const { token, ...where } = place;
  const { start, end } = where.range;
  const fields = all.filter((one) => one !== token && (one.range.end <= start || one.range.start >= end));
  const isPlainWord = (one: FieldToken): boolean =>
    !one.name && isWord(one.text) && !looksLikeNumber(one.text) && !tagFields[tag].flags.includes(one.text);
  return {
    place: 'field',
    tag,
    ...where,
    typed: text.slice(where.range.start, offset),
    fields,
    wordsBefore: fields.filter((one) => one.range.end < offset && isPlainWord(one)).map((one) => one.text),
  };
}
