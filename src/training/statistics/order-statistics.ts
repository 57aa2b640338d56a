/** A copy of the values in ascending order. */
export function ascending(values: readonly number[]): number[] {
  return [...values].sort((a, b) => a - b);
}

/**
 * The value at a rank of an ascending list. Ranks count from 1; a rank between two values is interpolated
 * linearly, and a rank outside the list gives the nearest end. `undefined` for an empty list.
 */
export function valueAtRank(ordered: readonly number[], rank: number): number | undefined {
  if (ordered.length === 0) return undefined;
  const inside = Math.min(Math.max(rank, 1), ordered.length);
  const below = Math.floor(inside);
  const low = ordered[below - 1];
  const high = ordered[Math.min(below, ordered.length - 1)];
  if (low === undefined || high === undefined) return undefined;
  return below === inside ? low : low + (inside - below) * (high - low);
}

/** The middle value, or the mean of the two middle values. `undefined` for an empty list. */
export function median(values: readonly number[]): number | undefined {
  return valueAtRank(ascending(values), (values.length + 1) / 2);
}
