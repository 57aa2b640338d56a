import type { Interval } from './estimate';
import { type NotEstimable, notEstimable } from './estimate';
import { mean } from './moments';
import { twoSidedZ } from './normal-quantile';

/** The difference between the sides in the unit of the readings. */
export interface SideDifference {
  readonly status: 'estimated';
  /** All readings of both sides. */
  readonly n: number;
  readonly readings: { readonly left: number; readonly right: number };
  readonly left: number;
  readonly right: number;
  /** Right minus left. */
  readonly difference: number;
  readonly larger: 'left' | 'right' | 'even';
  /** What measuring error alone explains of it, and the interval that follows; absent without a typical error. */
  readonly noise?: number;
  readonly interval?: Interval;
  /** Whether the difference is beyond its noise: only then is it worth showing. */
  readonly beyondNoise?: boolean;
}

/**
 * The absolute difference of the sides' mean readings, with direction, held against its own noise
 * z x typical error x sqrt(1/left readings + 1/right readings), which for single readings is 1.96 sqrt(2) x typical
 * error. The absolute difference is the one that always makes sense: a ratio does not where the zero is arbitrary
 * (-5 and 5 degrees of hip extension).
 */
export function sideDifference(
  left: readonly number[],
  right: readonly number[],
  typicalError?: number,
  confidence = 0.95,
): SideDifference | NotEstimable<'a-side-is-missing'> {
  const n = left.length + right.length;
  const [leftMean, rightMean] = [mean(left), mean(right)];
  if (leftMean === undefined || rightMean === undefined) {
    return notEstimable(n, 'a-side-is-missing', [
      { what: 'left', have: left.length, need: 1 },
      { what: 'right', have: right.length, need: 1 },
    ]);
  }
  const difference = rightMean - leftMean;
  const found: SideDifference = {
    status: 'estimated',
    n,
    readings: { left: left.length, right: right.length },
    left: leftMean,
    right: rightMean,
    difference,
    larger: difference > 0 ? 'right' : difference < 0 ? 'left' : 'even',
  };
  if (typicalError === undefined) return found;
  const noise = twoSidedZ(confidence) * typicalError * Math.sqrt(1 / left.length + 1 / right.length);
  return {
    ...found,
    noise,
    interval: { lower: difference - noise, upper: difference + noise },
    beyondNoise: Math.abs(difference) > noise,
  };
}
