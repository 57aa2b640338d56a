/** A two-sided tabular cumulative sum. */
export interface Cusum {
  readonly n: number;
  /** Sum of what lies above target + slack, never below zero, after each value. */
  readonly high: readonly number[];
  /** Sum of what lies below target - slack, never below zero, after each value. */
  readonly low: readonly number[];
  /** Positions (from 0) at which either sum is above the limit. */
  readonly alarms: readonly number[];
}

/** What a cumulative sum is held against, in the unit of the values. */
export interface CusumDesign {
  /** The level that is held normal. */
  readonly target: number;
  /** Deviations up to this size are let pass: half of the shift to be found. */
  readonly slack: number;
  /** A sum above this is an alarm. */
  readonly limit: number;
}

/**
 * Page's tabular cumulative sum: high = max(0, high + x - target - slack), low = max(0, low + target - slack - x).
 * Source: Page ES (1954) Biometrika 41:100-115. False alarms are certain in the long run.
 */
export function tabularCusum(values: readonly number[], { target, slack, limit }: CusumDesign): Cusum {
  const high: number[] = [];
  const low: number[] = [];
  for (const value of values) {
    high.push(Math.max(0, (high.at(-1) ?? 0) + value - target - slack));
    low.push(Math.max(0, (low.at(-1) ?? 0) + target - slack - value));
  }
  const alarms = values.flatMap((_, i) => ((high[i] ?? 0) > limit || (low[i] ?? 0) > limit ? [i] : []));
  return { n: values.length, high, low, alarms };
}
