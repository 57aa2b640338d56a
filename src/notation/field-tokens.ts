import type { Located, SourceRange } from './source-range';

/** One field as it is written, before its meaning is known. */
export interface FieldToken {
  /** All its characters, name and quotes included. */
  readonly range: SourceRange;
  readonly text: string;
  /** The name of a named field: `for` in `for:low-split`. */
  readonly name?: Located<string>;
  /** What stands behind the name, or the whole field; quotes left out. */
  readonly value: Located<string>;
  readonly quoted: boolean;
  /** A quotation mark opens the value and none closes it. */
  readonly unclosed: boolean;
}

/** A tag's line behind the tag's name, cut into fields and the remark. */
export interface TagWords {
  readonly fields: readonly FieldToken[];
  readonly remark?: Located<string>;
}

const blank = /[ \t\u00a0]/;

/** The line's characters with its hidden stretches turned into blanks, so that offsets stay what they are. */
export function visibleText(text: string, range: SourceRange, hidden: readonly SourceRange[]): string {
  let line = text.slice(range.start, range.end);
  for (const one of hidden) {
    const start = Math.max(0, one.start - range.start);
    const end = Math.min(line.length, one.end - range.start);
    line = line.slice(0, start) + ' '.repeat(end - start) + line.slice(end);
  }
  return line;
}

/** `words` without the blanks around it, with the range that is left. */
export function trimmed(words: string, start: number): Located<string> {
  const value = words.trim();
  const from = start + (value === '' ? words.length : words.indexOf(value));
  return { value, range: { start: from, end: from + value.length } };
}

function fieldToken(written: string, start: number): FieldToken {
  const range = { start, end: start + written.length };
  const named = /^(\p{L}[\p{L}\p{N}-]*):(.*)$/u.exec(written);
  const nameText = named?.[1];
  const valueStart = nameText === undefined ? start : start + nameText.length + 1;
  const raw = written.slice(valueStart - start);
  const quoted = raw.startsWith('"');
  const unclosed = quoted && (raw.length === 1 || !raw.endsWith('"'));
  const value = quoted ? raw.slice(1, unclosed ? undefined : -1) : raw;
  const inner = valueStart + (quoted ? 1 : 0);
  return {
    range,
    text: written,
    ...(nameText === undefined ? {} : { name: { value: nameText, range: { start, end: valueStart - 1 } } }),
    value: { value, range: { start: inner, end: inner + value.length } },
    quoted,
    unclosed,
  };
}

/** Length of the field at the start of `rest`: to the next blank or em dash that is not inside quotes. */
function fieldLength(rest: string): number {
  let inQuotes = false;
  for (let index = 0; index < rest.length; index += 1) {
    const character = rest[index] ?? '';
    if (character === '"' && (inQuotes || index === 0 || rest[index - 1] === ':')) {
      if (inQuotes) return index + 1;
      inQuotes = rest.indexOf('"', index + 1) > 0;
    } else if (!inQuotes && (blank.test(character) || character === '—')) return index;
  }
  return rest.length;
}

/**
 * Cuts what stands behind a tag's name into fields and remark.
 * The remark begins behind ` -- `, an em dash anywhere, or an en dash between blanks, outside of quotes.
 * @param words The visible characters behind the name.
 * @param start Offset of the first of them in the note.
 */
export function cutFields(words: string, start: number): TagWords {
  const fields: FieldToken[] = [];
  let index = 0;
  while (index < words.length) {
    if (blank.test(words[index] ?? '')) {
      index += 1;
      continue;
    }
    const rest = words.slice(index);
    const separator = /^(?:—|(?:--|–)(?=[ \t\u00a0]|$))/.exec(rest);
    if (separator) {
      const remark = trimmed(rest.slice(separator[0].length), start + index + separator[0].length);
      return remark.value === '' ? { fields } : { fields, remark };
    }
    const length = fieldLength(rest);
    fields.push(fieldToken(rest.slice(0, length), start + index));
    index += length;
  }
  return { fields };
}
