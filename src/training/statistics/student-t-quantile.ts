import { logBeta, lowerBetaTail } from './beta-function';
import { increasingRoot } from './increasing-root';

/** The chance that a variable with Student's t distribution lies below `t`. */
export function studentTCumulative(t: number, degreesOfFreedom: number): number {
  const tail = 0.5 * lowerBetaTail(degreesOfFreedom / (degreesOfFreedom + t * t), degreesOfFreedom / 2, 0.5);
  return t < 0 ? tail : 1 - tail;
}

/**
 * The quantile of Student's t distribution: the value below which the share `probability` (strictly between 0 and
 * 1) lies. Inverts the distribution function, in the lower tail.
 */
export function studentTQuantile(probability: number, degreesOfFreedom: number): number {
  if (!(probability > 0 && probability < 1) || !(degreesOfFreedom > 0)) {
    throw new RangeError(`No t quantile at ${probability} with ${degreesOfFreedom} degrees of freedom`);
  }
  if (probability === 0.5) return 0;
  if (probability > 0.5) return -studentTQuantile(1 - probability, degreesOfFreedom);
  const logScale = 0.5 * Math.log(degreesOfFreedom) + logBeta(degreesOfFreedom / 2, 0.5);
  const density = (t: number): number =>
    Math.exp(-((degreesOfFreedom + 1) / 2) * Math.log1p((t * t) / degreesOfFreedom) - logScale);
  let lower = -1;
  while (studentTCumulative(lower, degreesOfFreedom) > probability) lower *= 2;
  return increasingRoot(
    { value: (t) => studentTCumulative(t, degreesOfFreedom), slope: density },
    probability,
    lower,
    0,
  );
}
