/** The properties of `values` that are not `undefined`: optional means absent here. */
export function present<T extends object>(values: T): { [Key in keyof T]?: Exclude<T[Key], undefined> } {
  const found: Record<string, unknown> = {};
  // Objects that grow key by key stay small and fast; those out of a list of entries do not.
  for (const key in values) {
    const value = values[key];
    if (value !== undefined) found[key] = value;
  }
  return found as { [Key in keyof T]?: Exclude<T[Key], undefined> };
}
