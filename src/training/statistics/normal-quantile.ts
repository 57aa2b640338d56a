import { upperGammaTail } from './gamma-function';

// Rational approximations by P. J. Acklam, relative error below 1.15e-9 before the refining step.
const CENTRE_TOP = [
  -3.969683028665376e1, 2.209460984245205e2, -2.759285104469687e2, 1.38357751867269e2, -3.066479806614716e1,
  2.506628277459239,
] as const;
const CENTRE_BOTTOM = [
  -5.447609879822406e1, 1.615858368580409e2, -1.556989798598866e2, 6.680131188771972e1, -1.328068155288572e1,
  1,
] as const;
const TAIL_TOP = [
  -7.784894002430293e-3, -3.223964580411365e-1, -2.400758277161838, -2.549732539343734, 4.374664141464968,
  2.938163982698783,
] as const;
const TAIL_BOTTOM = [
  7.784695709041462e-3, 3.224671290700398e-1, 2.445134137142996, 3.754408661907416, 1,
] as const;
const TAIL = 0.02425;

/** The chance that a standard normal variable lies below `z`. */
export function normalCumulative(z: number): number {
  const tail = 0.5 * upperGammaTail(0.5, (z * z) / 2);
  return z < 0 ? tail : 1 - tail;
}

/**
 * The standard normal quantile: the `z` below which the share `probability` (0..1) of the distribution lies.
 * Acklam's approximation and one step of Halley's method. 0 and 1 give minus and plus infinity.
 */
export function normalQuantile(probability: number): number {
  if (!(probability >= 0 && probability <= 1)) {
    throw new RangeError(`A probability lies between 0 and 1, not at ${probability}`);
  }
  // Work in the lower tail, where the distribution function keeps its digits, so that q(p) = -q(1 - p) exactly.
  return probability <= 0.5 ? lowerQuantile(probability) : -lowerQuantile(1 - probability);
}

/**
 * The factor of a two-sided normal interval: 1.959964 for a `confidence` of 0.95.
 */
export function twoSidedZ(confidence: number): number {
  if (!(confidence > 0 && confidence < 1)) {
    throw new RangeError(`A confidence lies between 0 and 1, not at ${confidence}`);
  }
  return -normalQuantile((1 - confidence) / 2);
}

function lowerQuantile(probability: number): number {
  if (probability === 0) return Number.NEGATIVE_INFINITY;
  if (probability === 0.5) return 0;
  const z = approximate(probability);
  const error = (normalCumulative(z) - probability) * Math.sqrt(2 * Math.PI) * Math.exp((z * z) / 2);
  return z - error / (1 + (z * error) / 2);
}

function approximate(probability: number): number {
  if (probability < TAIL) {
    const q = Math.sqrt(-2 * Math.log(probability));
    return polynomial(TAIL_TOP, q) / polynomial(TAIL_BOTTOM, q);
  }
  const q = probability - 0.5;
  const r = q * q;
  return (polynomial(CENTRE_TOP, r) * q) / polynomial(CENTRE_BOTTOM, r);
}

function polynomial(coefficients: readonly number[], x: number): number {
  return coefficients.reduce((total, coefficient) => total * x + coefficient, 0);
}
