import type { Point } from './point';

/** Kendall's score of a series, with what its spread depends on. */
export interface KendallScore {
  readonly n: number;
  /** S: pairs that rise minus pairs that fall. */
  readonly s: number;
  /** Variance of S when there is no trend, corrected for ties in `y` and in `x`. */
  readonly variance: number;
  readonly tied: boolean;
  /** Kendall's tau-b: S as a share of the untied pairs, -1..1. `undefined` when every x or every y is the same. */
  readonly tau: number | undefined;
}

/**
 * S = sum over pairs of sign(dx) sign(dy), and its variance without a trend,
 *
 *     [n(n-1)(2n+5) - St(t-1)(2t+5) - Su(u-1)(2u+5)] / 18
 *     + [St(t-1)(t-2)] [Su(u-1)(u-2)] / (9n(n-1)(n-2))
 *     + [St(t-1)] [Su(u-1)] / (2n(n-1))
 *
 * with tie sizes t in y and u in x. Source: Kendall (1975) Rank Correlation Methods, 4th edition, chapter 4; Gilbert
 * (1987) Statistical Methods for Environmental Pollution Monitoring, chapter 16.
 */
export function kendallScore(points: readonly Point[]): KendallScore {
  const n = points.length;
  let s = 0;
  for (const [i, a] of points.entries()) {
    for (const b of points.slice(i + 1)) s += Math.sign(b.x - a.x) * Math.sign(b.y - a.y);
  }
  const t = tieSizes(points.map(({ y }) => y));
  const u = tieSizes(points.map(({ x }) => x));
  const pairs = (n * (n - 1)) / 2;
  const untied = (pairs - total(t, pairsOf)) * (pairs - total(u, pairsOf));
  return {
    n,
    s,
    variance: scoreVariance(n, t, u),
    tied: t.length > 0 || u.length > 0,
    tau: untied > 0 ? s / Math.sqrt(untied) : undefined,
  };
}

/**
 * The exact chance P(S >= `s`) when there is no trend and nothing is tied: the share of the n! orders of `n` values
 * whose score is at least `s`. Built up one value at a time (the k-th value can add 0..k-1 discordant pairs).
 */
export function exactUpperTail(n: number, s: number): number {
  let shares = [1];
  for (let k = 2; k <= n; k++) {
    const next = new Array<number>(shares.length + k - 1).fill(0);
    for (const [discordant, share] of shares.entries()) {
      for (let added = 0; added < k; added++) {
        next[discordant + added] = (next[discordant + added] ?? 0) + share / k;
      }
    }
    shares = next;
  }
  const mostDiscordant = ((n * (n - 1)) / 2 - s) / 2;
  return shares.reduce((tail, share, discordant) => (discordant <= mostDiscordant ? tail + share : tail), 0);
}

/** Sizes of the groups of equal values, groups of one left out. */
function tieSizes(values: readonly number[]): number[] {
  const sizes = new Map<number, number>();
  for (const value of values) sizes.set(value, (sizes.get(value) ?? 0) + 1);
  return [...sizes.values()].filter((size) => size > 1);
}

function scoreVariance(n: number, t: readonly number[], u: readonly number[]): number {
  if (n < 2) return 0;
  const main = n * (n - 1) * (2 * n + 5) - total(t, weightOf) - total(u, weightOf);
  // Groups of three need n > 2; below that the product of the third-order terms is zero.
  const triples = n > 2 ? (total(t, triplesOf) * total(u, triplesOf)) / (9 * n * (n - 1) * (n - 2)) : 0;
  return main / 18 + triples + (2 * total(t, pairsOf) * total(u, pairsOf)) / (n * (n - 1));
}

function total(sizes: readonly number[], term: (size: number) => number): number {
  return sizes.reduce((sum, size) => sum + term(size), 0);
}

function weightOf(size: number): number {
  return size * (size - 1) * (2 * size + 5);
}

function pairsOf(size: number): number {
  return (size * (size - 1)) / 2;
}

function triplesOf(size: number): number {
  return size * (size - 1) * (size - 2);
}
