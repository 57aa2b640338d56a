/** The sum of the values; 0 for an empty list. */
export function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}

/** The arithmetic mean. `undefined` for an empty list. */
export function mean(values: readonly number[]): number | undefined {
  return values.length === 0 ? undefined : sum(values) / values.length;
}

/** The sum of squared distances from the mean; 0 for fewer than two values. */
export function squaredDeviations(values: readonly number[]): number {
  const centre = mean(values);
  if (centre === undefined || values.length < 2) return 0;
  return sum(values.map((value) => (value - centre) ** 2));
}

/** The sample standard deviation, divisor n - 1. `undefined` for fewer than two values. */
export function sampleStandardDeviation(values: readonly number[]): number | undefined {
  return values.length < 2 ? undefined : Math.sqrt(squaredDeviations(values) / (values.length - 1));
}
