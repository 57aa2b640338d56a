/**
 * The published ways to express a difference between the sides, by name. They give different numbers for the same
 * legs, so the name is always shown with the number.
 */
export type AsymmetryEquation =
  /** (larger - smaller) / larger x 100: for tests of one side at a time. The default. */
  | 'percent-of-larger'
  /** (larger - smaller) / (larger + smaller) x 100: for tests of both sides at once, a share of their total. */
  | 'percent-of-total'
  /** (right - left) / half of their sum x 100: the symmetry index. Signed: positive when the right is larger. */
  | 'symmetry-index'
  /** (larger / smaller - 1) x 100. */
  | 'percent-of-smaller'
  /** (45 - atan(left / right) in degrees) / 90 x 100: Zifchock's symmetry angle. Positive when the right is larger. */
  | 'symmetry-angle'
  /** 100 ln(right / left). Positive when the right is larger. */
  | 'log-ratio';

/** Bishop's recommendation for unilateral tests, which readings of one side at a time are. */
export const DEFAULT_ASYMMETRY: AsymmetryEquation = 'percent-of-larger';

/**
 * Asymmetry of two sides in percent by a named equation. `undefined` unless both readings are above zero: a ratio
 * means nothing where the zero is arbitrary (joint angles) or a side is at zero; show the absolute difference there
 * (`sideDifference`), and show either only beyond its noise.
 *
 * Sources: Bishop C et al (2018) Strength Cond J 40(4):1-6, equations for unilateral and bilateral tests; Zifchock RA
 * et al (2008) Gait Posture 27:622-627, symmetry angle. No threshold has prospective evidence (Bishop 2018).
 */
export function asymmetry(
  left: number,
  right: number,
  equation: AsymmetryEquation = DEFAULT_ASYMMETRY,
): number | undefined {
  if (!(left > 0 && right > 0)) return undefined;
  const larger = Math.max(left, right);
  const smaller = Math.min(left, right);
  switch (equation) {
    case 'percent-of-larger':
      return (100 * (larger - smaller)) / larger;
    case 'percent-of-total':
      return (100 * (larger - smaller)) / (larger + smaller);
    case 'symmetry-index':
      return (100 * (right - left)) / ((right + left) / 2);
    case 'percent-of-smaller':
      return 100 * (larger / smaller - 1);
    case 'symmetry-angle':
      return (100 * (45 - (Math.atan(left / right) * 180) / Math.PI)) / 90;
    case 'log-ratio':
      return 100 * Math.log(right / left);
  }
}
