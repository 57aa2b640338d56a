/**
 * Letters to add, drop, change or swap with their neighbour to make `one` of `other`
 * (optimal string alignment distance), or `undefined` when it is above `limit`.
 */
export function editDistance(one: string, other: string, limit: number): number | undefined {
  if (Math.abs(one.length - other.length) > limit) return undefined;
  let beforeLast: number[] = [];
  let last = Array.from({ length: other.length + 1 }, (_, index) => index);
  for (let row = 1; row <= one.length; row += 1) {
    const current = [row];
    for (let column = 1; column <= other.length; column += 1) {
      const same = one[row - 1] === other[column - 1];
      let best = Math.min(
        (last[column] ?? 0) + 1,
        (current[column - 1] ?? 0) + 1,
        (last[column - 1] ?? 0) + (same ? 0 : 1),
      );
      const swapped =
        row > 1 && column > 1 && one[row - 1] === other[column - 2] && one[row - 2] === other[column - 1];
      if (swapped) best = Math.min(best, (beforeLast[column - 2] ?? 0) + 1);
      current.push(best);
    }
    beforeLast = last;
    last = current;
  }
  const distance = last[other.length] ?? 0;
  return distance <= limit ? distance : undefined;
}

/**
 * The candidate that `word` is probably meant to be: one letter off for short words, up to two for words of
 * five letters and more, capitals not counted. The first of equally near ones; `undefined` when none is near.
 */
export function nearestWord(word: string, candidates: Iterable<string>): string | undefined {
  const lower = word.toLowerCase();
  let best: { word: string; distance: number } | undefined;
  for (const candidate of candidates) {
    const limit = Math.min(lower.length, candidate.length) >= 5 ? 2 : 1;
    const distance = editDistance(lower, candidate.toLowerCase(), limit);
    if (distance !== undefined && (!best || distance < best.distance)) best = { word: candidate, distance };
  }
  return best?.word;
}
