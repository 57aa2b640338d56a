import { type NotEstimable, notEstimable } from './estimate';
import { exactUpperTail, kendallScore } from './kendall-score';
import { normalCumulative } from './normal-quantile';
import type { Point } from './point';

/** The outcome of a test for a steady rise or fall. */
export interface TrendTest {
  readonly status: 'estimated';
  readonly n: number;
  /** Rising minus falling pairs. */
  readonly s: number;
  readonly variance: number;
  /** S in standard deviations, moved one step towards zero because S is a whole number. */
  readonly z: number;
  /** Two-sided: the chance of an S at least this far from zero without a trend. */
  readonly p: number;
  /** `exact` counts orders; `normal` uses `z`. */
  readonly method: 'exact' | 'normal';
  readonly tau: number | undefined;
}

export type TrendReason = 'too-few-points' | 'no-variation';

/** With four points not even a perfect run reaches 5 % two-sided (2 of 24 orders), so four are too few. */
export const FEWEST_POINTS_FOR_TREND = 5;

/** Up to this many points without ties the chance is counted, as in Gilbert's (1987) table A18. */
export const MOST_POINTS_FOR_EXACT = 10;

/**
 * The Mann-Kendall test for a trend in any number of readings, ties in `y` and in `x` allowed.
 *
 * Sources: Mann (1945) Econometrica 13:245-259; Kendall (1975); Gilbert (1987) chapter 16. Serial correlation makes
 * `p` too small; readings taken in different states (warm, cold) do not belong in one series.
 */
export function mannKendall(points: readonly Point[]): TrendTest | NotEstimable<TrendReason> {
  const { n, s, variance, tied, tau } = kendallScore(points);
  if (n < FEWEST_POINTS_FOR_TREND) {
    return notEstimable(n, 'too-few-points', [{ what: 'points', have: n, need: FEWEST_POINTS_FOR_TREND }]);
  }
  if (variance === 0) return notEstimable(n, 'no-variation');
  const z = (s - Math.sign(s)) / Math.sqrt(variance);
  const exact = !tied && n <= MOST_POINTS_FOR_EXACT;
  const tail = exact ? exactUpperTail(n, Math.abs(s)) : normalCumulative(-Math.abs(z));
  return {
    status: 'estimated',
    n,
    s,
    variance,
    z,
    p: Math.min(1, 2 * tail),
    method: exact ? 'exact' : 'normal',
    tau,
  };
}
