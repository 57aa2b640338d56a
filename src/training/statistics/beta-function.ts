import { logGamma } from './gamma-function';

const MOST_TERMS = 10_000;
const TINY = 1e-300;

/** The natural logarithm of the beta function B(a, b), for positive arguments. */
export function logBeta(a: number, b: number): number {
  return logGamma(a) + logGamma(b) - logGamma(a + b);
}

/**
 * The regularised incomplete beta function I_x(a, b), the chance that a beta variable lies below `x`.
 * Continued fraction (modified Lentz). Formula: Abramowitz & Stegun 26.5.8.
 */
export function lowerBetaTail(x: number, a: number, b: number): number {
  if (x <= 0) return 0;
  if (x >= 1) return 1;
  const front = Math.exp(a * Math.log(x) + b * Math.log1p(-x) - logBeta(a, b));
  // The fraction converges fast below the mean; above it, the other tail does.
  return x < (a + 1) / (a + b + 2)
    ? (front * fraction(x, a, b)) / a
    : 1 - (front * fraction(1 - x, b, a)) / b;
}

function fraction(x: number, a: number, b: number): number {
  let c = 1;
  let d = 1 / nonZero(1 - ((a + b) * x) / (a + 1));
  let value = d;
  for (let m = 1; m < MOST_TERMS; m++) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    d = 1 / nonZero(1 + even * d);
    c = nonZero(1 + even / c);
    value *= d * c;
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    d = 1 / nonZero(1 + odd * d);
    c = nonZero(1 + odd / c);
    value *= d * c;
    if (Math.abs(d * c - 1) < Number.EPSILON) break;
  }
  return value;
}

function nonZero(value: number): number {
  return Math.abs(value) < TINY ? TINY : value;
}
