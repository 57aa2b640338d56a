import { stripVTControlCharacters } from 'node:util';

/** Control characters, and marks that make a terminal show text in another order than it stands. */
const hidden = /[\p{Cc}\u061c\u200e\u200f\u2028\u2029\u202a-\u202e\u2066-\u2069]/gu;

/** `text` from a note or a file name as one line that a terminal only shows: nothing in it commands the terminal. */
export function terminalLine(text: string): string {
  return stripVTControlCharacters(text)
    .replace(/[\t\r\n]+/g, ' ')
    .replace(hidden, '');
}

/** `value` as JSON that is safe to show as well: what a terminal could obey is written as an escape. */
export function terminalJson(value: unknown): string {
  // JSON's own line breaks are the only control characters outside of strings, and are kept.
  return JSON.stringify(value, undefined, 2).replace(hidden, (character) =>
    character === '\n' ? character : `\\u${character.charCodeAt(0).toString(16).padStart(4, '0')}`,
  );
}
