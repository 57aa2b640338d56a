import { type Interval, type NotEstimable, notEstimable } from './estimate';
import { kendallScore } from './kendall-score';
import { twoSidedZ } from './normal-quantile';
import { ascending, median, valueAtRank } from './order-statistics';
import type { Point } from './point';

/** A straight line through readings, unmoved by single outliers. */
export interface TheilSenLine {
  readonly status: 'estimated';
  readonly n: number;
  /** How many pairs of points with different `x` the slope is the median of. */
  readonly slopes: number;
  /** In units of `y` for one unit of `x`. */
  readonly slope: number;
  readonly intercept: {
    /** median(y) - slope x median(x): Conover's convention, SciPy's "separate". The line runs through the medians. */
    readonly separate: number;
    /** median(y - slope x): SciPy's "joint". Half of the points lie on either side. */
    readonly joint: number;
  };
  readonly medianX: number;
  readonly medianY: number;
  /** First and last observed `x`. */
  readonly observed: Interval;
  readonly confidence: number;
  /** Interval of the slope, or what is missing for one. */
  readonly interval: Interval | NotEstimable<'too-few-points' | 'too-many-ties'>;
}

export type TheilSenReason = 'too-few-points' | 'same-x';

/**
 * The Theil-Sen slope (median of the slopes of all pairs) with Sen's rank-based interval as Gilbert gives it:
 * C = z sqrt(Var S); the bounds are the M1-th and (M2 + 1)-th of the N ordered slopes, M1 = (N - C)/2 and
 * M2 = (N + C)/2, fractional ranks interpolated. (Another convention rounds the ranks instead; it differs a little.)
 * Where M1 falls below 1 but rounds to it, the outermost slopes are the bounds; below that, there are too few points
 * for the confidence asked.
 *
 * Sources: Theil (1950); Sen (1968) JASA 63:1379-1389; Gilbert (1987) section 16.5. The interval leaves out model
 * error and measurement bias. Repeats of one day belong collapsed first (`collapseRepeats`).
 *
 * @param confidence of the interval, 0..1
 */
export function theilSen(
  points: readonly Point[],
  confidence = 0.95,
): TheilSenLine | NotEstimable<TheilSenReason> {
  const n = points.length;
  const z = twoSidedZ(confidence);
  const slopes = pairwiseSlopes(points);
  const slope = valueAtRank(slopes, (slopes.length + 1) / 2);
  const medianX = median(points.map(({ x }) => x));
  const medianY = median(points.map(({ y }) => y));
  if (n < 2 || medianX === undefined || medianY === undefined) {
    return notEstimable(n, 'too-few-points', [{ what: 'points', have: n, need: 2 }]);
  }
  if (slope === undefined) return notEstimable(n, 'same-x', [{ what: 'different-x', have: 1, need: 2 }]);
  const xs = ascending(points.map(({ x }) => x));
  return {
    status: 'estimated',
    n,
    slopes: slopes.length,
    slope,
    intercept: {
      separate: medianY - slope * medianX,
      joint: median(points.map(({ x, y }) => y - slope * x)) ?? 0,
    },
    medianX,
    medianY,
    observed: { lower: xs[0] ?? medianX, upper: xs.at(-1) ?? medianX },
    confidence,
    interval: slopeInterval(slopes, kendallScore(points).variance, z, n),
  };
}

/** The height of the line at `x`, drawn through the medians. */
export function lineAt(line: TheilSenLine, x: number): number {
  return line.medianY + line.slope * (x - line.medianX);
}

function pairwiseSlopes(points: readonly Point[]): number[] {
  const slopes: number[] = [];
  for (const [i, a] of points.entries()) {
    // Adding zero turns a slope of -0, which formatters print with its sign, into 0.
    for (const b of points.slice(i + 1)) if (a.x !== b.x) slopes.push((b.y - a.y) / (b.x - a.x) + 0);
  }
  return ascending(slopes);
}

function slopeInterval(
  slopes: readonly number[],
  variance: number,
  z: number,
  n: number,
): TheilSenLine['interval'] {
  const reach = z * Math.sqrt(variance);
  const lowerRank = (slopes.length - reach) / 2;
  const lower = valueAtRank(slopes, lowerRank);
  const upper = valueAtRank(slopes, (slopes.length + reach) / 2 + 1);
  if (lower !== undefined && upper !== undefined && Math.round(lowerRank) >= 1) return { lower, upper };
  const need = fewestPointsForInterval(z);
  return n < need
    ? notEstimable(n, 'too-few-points', [{ what: 'points', have: n, need }])
    : notEstimable(n, 'too-many-ties');
}

/** The fewest untied points for which the lowest rank exists at this confidence: 5 at 95 %. */
function fewestPointsForInterval(z: number): number {
  for (let n = 2; ; n++) {
    const pairs = (n * (n - 1)) / 2;
    const reach = z * Math.sqrt((n * (n - 1) * (2 * n + 5)) / 18);
    if (Math.round((pairs - reach) / 2) >= 1) return n;
  }
}
