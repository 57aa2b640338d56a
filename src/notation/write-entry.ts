import type { EntryBase } from './entries';
import type { TextEdit } from './text-edit';

/** A field to write: a bare one (`18:30`, `7/10`) or a named one (`moved:2026-02-26`). */
export interface FieldToWrite {
  readonly name?: string;
  readonly text: string;
}

/** Signature only, filled in next: ticks or empties the box, adding one where the tag has none. */
export function tickEdits(_text: string, _entry: EntryBase, _checked: boolean): readonly TextEdit[] {
  return [];
}

/** Signature only, filled in next: adds a field behind the tag's last one and before its remark. */
export function addFieldEdits(_text: string, _entry: EntryBase, _field: FieldToWrite): readonly TextEdit[] {
  return [];
}
