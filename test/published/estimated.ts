import assert from 'node:assert/strict';

/** The result of a statistic that could be given; fails the test with the reason otherwise. */
export function estimated<T extends { readonly status: string }>(
  result: T,
): Extract<T, { readonly status: 'estimated' }> {
  assert.equal(result.status, 'estimated', JSON.stringify(result));
  return result as Extract<T, { readonly status: 'estimated' }>;
}

/** The refusal of a statistic that could not be given; fails the test when it was given. */
export function refused<T extends { readonly status: string }>(
  result: T,
): Extract<T, { readonly status: 'not-estimable' }> {
  assert.equal(result.status, 'not-estimable', JSON.stringify(result));
  return result as Extract<T, { readonly status: 'not-estimable' }>;
}

/** A list that is known not to be empty at a place. */
export function at<T>(list: readonly T[], place: number): T {
  const value = list.at(place);
  assert.ok(value !== undefined, `nothing at place ${place}`);
  return value;
}

/** Points with x = 1, 2, 3, ... */
export function series(...values: readonly number[]): readonly { readonly x: number; readonly y: number }[] {
  return values.map((y, i) => ({ x: i + 1, y }));
}

/** Points from two equally long lists. */
export function paired(
  xs: readonly number[],
  ys: readonly number[],
): readonly { readonly x: number; readonly y: number }[] {
  assert.equal(xs.length, ys.length);
  return xs.map((x, i) => ({ x, y: at(ys, i) }));
}
