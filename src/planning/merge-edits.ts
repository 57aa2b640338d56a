import type { TextEdit } from '../notation/text-edit';

/**
 * Two lists of edits of one text as one list in order. At one offset those of `first` come first.
 * @throws RangeError when edits overlap, which no two planned changes may.
 */
export function mergeEdits(first: readonly TextEdit[], second: readonly TextEdit[]): readonly TextEdit[] {
  const all = [...first, ...second];
  const order = new Map(all.map((edit, index) => [edit, index]));
  all.sort(
    (one, other) =>
      one.range.start - other.range.start || // An insertion stands before a replacement that begins there.
      one.range.end - other.range.end ||
      (order.get(one) ?? 0) - (order.get(other) ?? 0),
  );
  let end = 0;
  for (const edit of all) {
    if (edit.range.start < end) throw new RangeError(`Edits overlap at ${edit.range.start}.`);
    end = edit.range.end;
  }
  return all;
}
