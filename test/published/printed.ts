import assert from 'node:assert/strict';

/**
 * Asserts that a computed number is the one that a source prints, to the digits that it prints: within half a unit of
 * the last one.
 *
 * @param text the number as printed, such as `0.0764` or `-18.1967`
 */
export function printed(actual: number | undefined, text: string, about = ''): void {
  const expected = Number(text);
  assert.ok(Number.isFinite(expected), `${text} is not a number`);
  const decimals = text.split('.')[1]?.length ?? 0;
  assert.ok(actual !== undefined, `${about} nothing computed, expected ${text}`);
  // A hair more than half a unit, so that a printed 5 may have been rounded either way.
  const tolerance = 0.5001 * 10 ** -decimals;
  assert.ok(Math.abs(actual - expected) <= tolerance, `${about} computed ${actual}, printed ${text}`);
}

/** Asserts a whole row of printed numbers, separated by blanks. */
export function printedRow(actual: readonly number[], texts: string): void {
  const words = texts.trim().split(/\s+/);
  assert.equal(actual.length, words.length);
  for (const [i, word] of words.entries()) printed(actual[i], word, `place ${i}:`);
}
