import { betaQuantile } from './beta-quantile';
import type { Interval } from './estimate';
import { twoSidedZ } from './normal-quantile';

/** A share with its interval. */
export interface Proportion extends Interval {
  readonly n: number;
  readonly successes: number;
  readonly proportion: number;
}

/**
 * Wilson's score interval, the one that is shown: (p + z2/2n -+ z sqrt(p(1-p)/n + z2/4n2)) / (1 + z2/n).
 * `undefined` for n = 0. Sources: Wilson (1927) JASA 22:209-212; recommended for small n by Brown, Cai & DasGupta
 * (2001) Stat Sci 16:101-133.
 */
export function wilson(successes: number, n: number, confidence = 0.95): Proportion | undefined {
  if (!hasTrials(successes, n)) return undefined;
  const z = twoSidedZ(confidence);
  const proportion = successes / n;
  const centre = proportion + (z * z) / (2 * n);
  const reach = z * Math.sqrt((proportion * (1 - proportion)) / n + (z * z) / (4 * n * n));
  const scale = 1 + (z * z) / n;
  return {
    n,
    successes,
    proportion,
    lower: successes === 0 ? 0 : (centre - reach) / scale,
    upper: successes === n ? 1 : (centre + reach) / scale,
  };
}

/**
 * Wilson's interval with continuity correction, Newcombe's method 4: wider, nearer to the exact one.
 * `undefined` for n = 0. Source: Newcombe RG (1998) Stat Med 17:857-872.
 */
export function wilsonContinuityCorrected(
  successes: number,
  n: number,
  confidence = 0.95,
): Proportion | undefined {
  if (!hasTrials(successes, n)) return undefined;
  const z = twoSidedZ(confidence);
  const proportion = successes / n;
  const failed = 1 - proportion;
  const lowerReach = z * Math.sqrt(Math.max(0, z * z - 2 - 1 / n + 4 * proportion * (n * failed + 1)));
  const upperReach = z * Math.sqrt(Math.max(0, z * z + 2 - 1 / n + 4 * proportion * (n * failed - 1)));
  const scale = 2 * (n + z * z);
  return {
    n,
    successes,
    proportion,
    lower: successes === 0 ? 0 : Math.max(0, (2 * successes + z * z - 1 - lowerReach) / scale),
    upper: successes === n ? 1 : Math.min(1, (2 * successes + z * z + 1 + upperReach) / scale),
  };
}

/**
 * Jeffreys' interval: quantiles of Beta(k + 1/2, n - k + 1/2), closed at 0 for k = 0 and at 1 for k = n.
 * `undefined` for n = 0. Source: Brown, Cai & DasGupta (2001).
 */
export function jeffreys(successes: number, n: number, confidence = 0.95): Proportion | undefined {
  if (!hasTrials(successes, n)) return undefined;
  const tail = (1 - confidence) / 2;
  const [a, b] = [successes + 0.5, n - successes + 0.5];
  return {
    n,
    successes,
    proportion: successes / n,
    lower: successes === 0 ? 0 : betaQuantile(tail, a, b),
    upper: successes === n ? 1 : betaQuantile(1 - tail, a, b),
  };
}

/**
 * Clopper and Pearson's exact interval: never narrower than promised, often much wider. `undefined` for n = 0.
 * Source: Clopper & Pearson (1934) Biometrika 26:404-413.
 */
export function clopperPearson(successes: number, n: number, confidence = 0.95): Proportion | undefined {
  if (!hasTrials(successes, n)) return undefined;
  const tail = (1 - confidence) / 2;
  return {
    n,
    successes,
    proportion: successes / n,
    lower: successes === 0 ? 0 : betaQuantile(tail, successes, n - successes + 1),
    upper: successes === n ? 1 : betaQuantile(1 - tail, successes + 1, n - successes),
  };
}

function hasTrials(successes: number, n: number): boolean {
  if (!Number.isInteger(n) || !Number.isInteger(successes) || successes < 0 || successes > n) {
    throw new RangeError(`${successes} of ${n} is not a share of a count`);
  }
  return n > 0;
}
