import { logGamma, lowerGammaTail } from './gamma-function';
import { increasingRoot } from './increasing-root';

/** The chance that a chi-square variable with `degreesOfFreedom` lies below `x`. */
export function chiSquareCumulative(x: number, degreesOfFreedom: number): number {
  return lowerGammaTail(degreesOfFreedom / 2, x / 2);
}

/**
 * The chi-square quantile: the value below which the share `probability` (strictly between 0 and 1) of the
 * distribution lies. Inverts the distribution function, so it is as exact as that.
 */
export function chiSquareQuantile(probability: number, degreesOfFreedom: number): number {
  if (!(probability > 0 && probability < 1) || !(degreesOfFreedom > 0)) {
    throw new RangeError(
      `No chi-square quantile at ${probability} with ${degreesOfFreedom} degrees of freedom`,
    );
  }
  const half = degreesOfFreedom / 2;
  const density = (x: number): number =>
    Math.exp((half - 1) * Math.log(x) - x / 2 - half * Math.LN2 - logGamma(half));
  let upper = degreesOfFreedom + 1;
  while (chiSquareCumulative(upper, degreesOfFreedom) < probability) upper *= 2;
  return increasingRoot(
    { value: (x) => chiSquareCumulative(x, degreesOfFreedom), slope: density },
    probability,
    0,
    upper,
  );
}
