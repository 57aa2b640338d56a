/** Looking things up in sorted lists. */

/** Index of the first entry of a sorted list that is at least `value`; its length when there is none. */
export function firstAtLeast(sorted: ArrayLike<number>, value: number): number {
  let low = 0;
  let high = sorted.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((sorted[middle] as number) < value) low = middle + 1;
    else high = middle;
  }
  return low;
}
