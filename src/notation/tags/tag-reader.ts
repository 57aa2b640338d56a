import type { EntryOf, TagName } from '../entries';
import type { FieldReader } from '../field-reader';
import type { TagLine } from '../tag-line';

/** Reads the fields of one tag; what belongs to the whole note, such as a goal's scope, is added by the caller. */
export type TagReader<Tag extends TagName> = (line: TagLine, fields: FieldReader) => EntryOf<Tag>;

/** Free words may hold dashes: they are all words, and no remark. */
export function withoutRemark(base: TagLine['base']): TagLine['base'] {
  const { remark: _remark, ...rest } = base;
  return rest;
}
