/** A function that rises with `x`, and its slope. */
export interface IncreasingFunction {
  readonly value: (x: number) => number;
  readonly slope: (x: number) => number;
}

const MOST_STEPS = 200;

/**
 * The `x` between `lower` and `upper` at which an increasing function reaches `target`: Newton steps, replaced by
 * halving of the bracket whenever a step would leave it. Exact to the last few digits of a double.
 */
export function increasingRoot(
  { value, slope }: IncreasingFunction,
  target: number,
  lower: number,
  upper: number,
): number {
  let low = lower;
  let high = upper;
  let x = (low + high) / 2;
  for (let step = 0; step < MOST_STEPS; step++) {
    const excess = value(x) - target;
    if (excess === 0) return x;
    if (excess > 0) high = x;
    else low = x;
    const newton = x - excess / slope(x);
    const next = newton > low && newton < high ? newton : (low + high) / 2;
    if (Math.abs(next - x) <= Number.EPSILON * Math.abs(next)) return next;
    x = next;
  }
  return x;
}
