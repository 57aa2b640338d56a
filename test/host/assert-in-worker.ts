// `node:assert/strict` for tests that run in a browser's worker: the few functions that they use.

/** A comparison did not hold. */
export class AssertionError extends Error {
  override readonly name = 'AssertionError';
}

function show(value: unknown): string {
  return JSON.stringify(value, undefined, 1) ?? String(value);
}

function same(left: unknown, right: unknown): boolean {
  if (Object.is(left, right)) return true;
  if (typeof left !== 'object' || typeof right !== 'object' || left === null || right === null) return false;
  if (Object.getPrototypeOf(left) !== Object.getPrototypeOf(right)) return false;
  const leftEntries = Object.entries(left);
  const rightEntries = new Map(Object.entries(right));
  return (
    leftEntries.length === rightEntries.size &&
    leftEntries.every(([key, value]) => rightEntries.has(key) && same(value, rightEntries.get(key)))
  );
}

/** Throws unless `value` is truthy. */
export function ok(value: unknown, message = 'Expected something truthy'): asserts value {
  if (!value) throw new AssertionError(`${message}, not ${show(value)}`);
}

/** Throws unless both are the same value. */
export function equal(actual: unknown, expected: unknown, message = 'Not equal'): void {
  if (!Object.is(actual, expected)) {
    throw new AssertionError(`${message}: ${show(actual)} is not ${show(expected)}`);
  }
}

/** Throws unless both hold the same: plain objects, lists and primitive values, at any depth. */
export function deepEqual(actual: unknown, expected: unknown, message = 'Not equal'): void {
  if (!same(actual, expected))
    throw new AssertionError(`${message}: ${show(actual)} is not ${show(expected)}`);
}

/** Throws unless `text` matches. */
export function match(text: string, expected: RegExp, message = 'No match'): void {
  if (!expected.test(text)) throw new AssertionError(`${message}: ${show(text)} does not match ${expected}`);
}

export default Object.assign(ok, { ok, equal, deepEqual, match, AssertionError });
