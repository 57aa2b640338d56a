import type { EntryBase } from './entries';
import { cutFields, type FieldToken } from './field-tokens';
import type { Located, SourceRange } from './source-range';
import type { TextEdit } from './text-edit';

/** A field to write: a bare one (`18:30`, `7/10`) or a named one (`moved:2026-02-26`). */
export interface FieldToWrite {
  readonly name?: string;
  /** Put in quotation marks when it holds a blank. */
  readonly text: string;
}

/** A field in the notation. */
export function formatField(field: FieldToWrite): string {
  const value = /[ \t]/.test(field.text) ? `"${field.text}"` : field.text;
  return field.name === undefined ? value : `${field.name}:${value}`;
}

/**
 * Ticks the entry's box or empties it. A tag without a box gets one, and a list marker when it has none.
 * No edit when the box already is as asked.
 */
export function tickEdits(_text: string, entry: EntryBase, checked: boolean): readonly TextEdit[] {
  const mark = checked ? 'x' : ' ';
  if (entry.task) return entry.task.checked === checked ? [] : [{ range: entry.task.range, text: mark }];
  const isItem = entry.itemRange.start < entry.range.start;
  const place = { start: entry.range.start, end: entry.range.start };
  return [{ range: place, text: `${isItem ? '' : '- '}[${mark}] ` }];
}

/** Adds a field behind the tag's last one and before its remark. */
export function addFieldEdits(_text: string, entry: EntryBase, field: FieldToWrite): readonly TextEdit[] {
  const place = { start: entry.fieldsEnd, end: entry.fieldsEnd };
  return [{ range: place, text: ` ${formatField(field)}` }];
}

/** Puts other characters in place of a field's value, quotation marks around it kept. */
export function replaceFieldEdits(field: Located<unknown>, text: string): readonly TextEdit[] {
  return [{ range: field.range, text }];
}

/** Replaces the value of a field that the entry has, or adds the field when it has none. */
export function setFieldEdits(
  text: string,
  entry: EntryBase,
  present: Located<unknown> | undefined,
  field: FieldToWrite,
): readonly TextEdit[] {
  return present ? replaceFieldEdits(present, field.text) : addFieldEdits(text, entry, field);
}

/** The fields of an entry as they are written, in the order of the text. */
export function fieldTokensOf(text: string, entry: EntryBase): readonly FieldToken[] {
  return cutFields(text.slice(entry.nameRange.end, entry.fieldsEnd), entry.nameRange.end).fields;
}

/** Removes the whole field in which `value` stands, its name and the blanks before it included. */
export function removeFieldEdits(text: string, entry: EntryBase, value: SourceRange): readonly TextEdit[] {
  const token = fieldTokensOf(text, entry).find(
    (one) => one.range.start <= value.start && value.end <= one.range.end,
  );
  if (!token) return [];
  let start = token.range.start;
  while (start > entry.nameRange.end && /[ \t\u00a0]/.test(text[start - 1] ?? '')) start -= 1;
  return [{ range: { start, end: token.range.end }, text: '' }];
}
