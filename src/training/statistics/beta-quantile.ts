import { logBeta, lowerBetaTail } from './beta-function';
import { increasingRoot } from './increasing-root';

/**
 * The quantile of the beta distribution with positive shapes `a` and `b`: the value (0..1) below which the share
 * `probability` (strictly between 0 and 1) lies.
 */
export function betaQuantile(probability: number, a: number, b: number): number {
  if (!(probability > 0 && probability < 1) || !(a > 0) || !(b > 0)) {
    throw new RangeError(`No beta quantile at ${probability} with shapes ${a} and ${b}`);
  }
  const logScale = logBeta(a, b);
  const density = (x: number): number =>
    Math.exp((a - 1) * Math.log(x) + (b - 1) * Math.log1p(-x) - logScale);
  return increasingRoot({ value: (x) => lowerBetaTail(x, a, b), slope: density }, probability, 0, 1);
}
