/** A value and what makes it the same as another. */
export interface Keyed<Value> {
  readonly key: string;
  readonly value: Value;
}

/**
 * Groups what several notes of one day hold in common, as a note and the copy that a sync program left beside it
 * do. The second occurrence of a key within one note is matched with the second of another, so that what a note
 * says twice counts twice.
 *
 * @param perNote the values of each note, in order
 * @returns every value in exactly one group, groups in order of their first value
 */
export function copiesOf<Value>(
  perNote: readonly (readonly Keyed<Value>[])[],
): readonly (readonly Value[])[] {
  const groups = new Map<string, Value[]>();
  for (const values of perNote) {
    const seen = new Map<string, number>();
    for (const { key, value } of values) {
      const occurrence = (seen.get(key) ?? 0) + 1;
      seen.set(key, occurrence);
      const name = `${occurrence} ${key}`;
      const group = groups.get(name);
      if (group) group.push(value);
      else groups.set(name, [value]);
    }
  }
  return [...groups.values()];
}
