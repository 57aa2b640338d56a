/** A closed interval, in the unit of the figure it belongs to. */
export interface Interval {
  readonly lower: number;
  readonly upper: number;
}

/** Something that was counted, and how much of it a figure needs before it can be given. */
export interface Shortfall<What extends string = string> {
  readonly what: What;
  readonly have: number;
  readonly need: number;
}

/**
 * The answer of a statistic that will not guess. `missing` names what more is needed; it is empty where more of
 * the same data would not help (a slope of zero, points that all stand on one day).
 */
export interface NotEstimable<Reason extends string = string> {
  readonly status: 'not-estimable';
  /** How many observations there were. */
  readonly n: number;
  readonly reason: Reason;
  readonly missing: readonly Shortfall[];
}

/** Builds the answer of a statistic that cannot be given. Counts that are high enough are left out of `missing`. */
export function notEstimable<Reason extends string>(
  n: number,
  reason: Reason,
  counts: readonly Shortfall[] = [],
): NotEstimable<Reason> {
  return { status: 'not-estimable', n, reason, missing: shortfalls(counts) };
}

/** Those counts that fall short of what is needed. */
export function shortfalls(counts: readonly Shortfall[]): readonly Shortfall[] {
  return counts.filter(({ have, need }) => have < need);
}
