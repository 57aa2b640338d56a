import { decodeNamedCharacterReference } from 'decode-named-character-reference';
import { ampersand, asterisk, isBlank, isPunctuation, lineFeed, underscore } from './characters';
import { delimiters, type Piece, withoutEmphasis } from './emphasis';
import type { InlineMark } from './inline-marks';

const named = /^&([A-Za-z0-9]{1,31});/;
const decimal = /^&#([0-9]{1,7});/;
const hexadecimal = /^&#[xX]([0-9A-Fa-f]{1,6});/;
const longestReference = 34;

/** CommonMark 0.31.2, section 2.5: code points that are no characters are shown as U+FFFD. */
function characterOf(code: number): string {
  const isControl = code < 9 || code === 11 || (code > 13 && code < 32) || (code > 126 && code < 160);
  const isSurrogate = code > 0xd7ff && code < 0xe000;
  const isNoncharacter = (code > 0xfdcf && code < 0xfdf0) || (code & 0xfffe) === 0xfffe;
  return isControl || isSurrogate || isNoncharacter || code > 0x10ffff
    ? '\ufffd'
    : String.fromCodePoint(code);
}

/** The character reference at the head of `source`, if it is one. */
function reference(source: string): { length: number; value: string } | undefined {
  const name = named.exec(source);
  if (name) {
    const value = decodeNamedCharacterReference(name[1] ?? '');
    return value === false ? undefined : { length: name[0].length, value };
  }
  const number = decimal.exec(source);
  if (number) return { length: number[0].length, value: characterOf(Number.parseInt(number[1] ?? '', 10)) };
  const hex = hexadecimal.exec(source);
  return hex ? { length: hex[0].length, value: characterOf(Number.parseInt(hex[1] ?? '', 16)) } : undefined;
}

/** The words between the backticks: one blank at each end is left out when both are there and more than blanks stand between. */
function codeWords(code: string): string {
  const isPadded = /^[ \n][\s\S]*[ \n]$/.test(code) && /[^ \n]/.test(code);
  return isPadded ? code.slice(1, -1) : code;
}

/** The source of HTML over several lines, without the indentation of the lines behind the first. */
function htmlSource(html: string): string {
  return html.replace(/\n {1,3}/g, '\n');
}

/** The pieces of text between marks: escapes and references are read, and delimiters stand apart. */
class WordReader {
  readonly pieces: Piece[] = [];
  /** What is not simply itself. */
  private readonly special = /[\\&*_\n]/g;

  constructor(private readonly text: string) {}

  /** Reads the characters from `start` to `end`, in which no mark begins. */
  readWords(start: number, end: number): void {
    let at = start;
    while (at < end) {
      this.special.lastIndex = at;
      const found = this.special.exec(this.text)?.index ?? end;
      const next = Math.min(found, end);
      if (next < end && this.text.charCodeAt(next) === lineFeed) {
        at = this.readLineEnding(at, next, end);
        continue;
      }
      this.pieces.push(this.text.slice(at, next));
      at = next < end ? this.readSpecial(next, end) : next;
    }
  }

  private readSpecial(position: number, end: number): number {
    const unit = this.text.charCodeAt(position);
    if (unit === asterisk || unit === underscore) return this.readDelimiters(position, unit);
    if (unit === ampersand) return this.readReference(position);
    const escaped = this.text.charCodeAt(position + 1);
    if (escaped === lineFeed) return this.skipIndentation(position + 2, end);
    this.pieces.push(isPunctuation(escaped) ? String.fromCharCode(escaped) : '\\');
    return position + (isPunctuation(escaped) ? 2 : 1);
  }

  private readDelimiters(position: number, marker: number): number {
    let behind = position + 1;
    while (this.text.charCodeAt(behind) === marker) behind += 1;
    const before = this.text.charCodeAt(position - 1);
    this.pieces.push(delimiters(marker, behind - position, before, this.text.charCodeAt(behind)));
    return behind;
  }

  private readReference(position: number): number {
    const found = reference(this.text.slice(position, position + longestReference));
    this.pieces.push(found?.value ?? '&');
    return position + (found?.length ?? 1);
  }

  /** Reads the words from `start` to the line ending at `position`. Blanks before it go; two spaces, and no tab among them, make a line break, which has no words. */
  private readLineEnding(start: number, position: number, end: number): number {
    let words = position;
    while (words > start && isBlank(this.text.charCodeAt(words - 1))) words -= 1;
    this.pieces.push(this.text.slice(start, words));
    const isBreak = position - words >= 2 && !this.text.slice(words, position).includes('\t');
    if (!isBreak) this.pieces.push('\n');
    return this.skipIndentation(position + 1, end);
  }

  private skipIndentation(position: number, end: number): number {
    let at = position;
    while (at < end && isBlank(this.text.charCodeAt(at))) at += 1;
    return at;
  }
}

/** Links and images deeper in one another than this are shown as they are written. */
const deepestMark = 32;

/**
 * The words of a heading or of a part of one, without Markdown's marks; HTML has none.
 * @param text What `marks` were found in, its lines joined by line feeds.
 * @param inImage An image's words keep their HTML.
 */
export function wordsBetween(
  text: string,
  start: number,
  end: number,
  marks: readonly InlineMark[],
  inImage = false,
): string {
  const reader = new WordReader(text);
  let at = start;
  for (const mark of marks) {
    reader.readWords(at, mark.start);
    reader.pieces.push(markWords(text, mark, inImage));
    at = mark.end;
  }
  reader.readWords(at, end);
  return withoutEmphasis(reader.pieces);
}

function markWords(text: string, mark: InlineMark, inImage: boolean): string {
  const source = text.slice(mark.wordsStart, mark.wordsEnd);
  if (mark.depth > deepestMark) return source;
  switch (mark.kind) {
    case 'code':
      return codeWords(source);
    case 'html':
      return inImage ? htmlSource(source) : '';
    case 'autolink':
      return source;
    default:
      return wordsBetween(
        text,
        mark.wordsStart,
        mark.wordsEnd,
        mark.children,
        inImage || mark.kind === 'image',
      );
  }
}
