import type { Side } from '../../notation/entries';
import { dimensionOf, type Unit } from '../../notation/quantity';
import type { IsoDate } from '../../notation/time/iso-date';
import { asymmetry } from '../statistics/asymmetry';
import { type NotEstimable, notEstimable } from '../statistics/estimate';
import { type SideDifference, sideDifference } from '../statistics/side-difference';
import type { Condition, ReadingSeries } from './reading-series';

/** The latest readings of the two sides, taken in one state, beside each other. */
export interface SideComparison extends SideDifference {
  readonly condition: Condition;
  readonly dates: { readonly left: IsoDate; readonly right: IsoDate };
  /** The side that is nearer to the target; only when the difference is beyond its noise. */
  readonly ahead?: Side;
  /**
   * Difference as a share of the larger side, in percent; only beyond noise, and where zero means none at all (times,
   * weights, counts).
   */
  readonly percentOfLarger?: number;
}

export type SideComparisonReason = 'a-side-is-missing' | 'days-too-far-apart';

/** Days between the latest readings of the sides beyond which they are no longer compared. No source. */
export const MOST_DAYS_BETWEEN_SIDES = 14;

const withTrueZero: readonly string[] = ['duration', 'mass', 'count'];

function readingsOfLatestDay(series: ReadingSeries): readonly number[] {
  const latest = series.days.at(-1);
  return series.readings.filter(({ day }) => day === latest?.day).map(({ value }) => value);
}

/**
 * The difference between the sides by the latest day of each in the metric's main state.
 *
 * @param typicalError of one reading; the larger of the two sides' own
 */
export function sideComparison(
  all: readonly ReadingSeries[],
  unit: Unit,
  typicalError: number,
  lowerIsBetter?: boolean,
): SideComparison | NotEstimable<SideComparisonReason> {
  const ofSide = (side: Side) => all.find((one) => one.isMain && one.side === side);
  const [left, right] = [ofSide('left'), ofSide('right')];
  const [leftDay, rightDay] = [left?.days.at(-1), right?.days.at(-1)];
  const difference = sideDifference(
    left ? readingsOfLatestDay(left) : [],
    right ? readingsOfLatestDay(right) : [],
    typicalError,
  );
  if (difference.status === 'not-estimable') return difference;
  if (!left || !leftDay || !rightDay) return notEstimable(difference.n, 'a-side-is-missing');
  if (Math.abs(leftDay.day - rightDay.day) > MOST_DAYS_BETWEEN_SIDES) {
    return notEstimable(difference.n, 'days-too-far-apart');
  }
  const { larger, beyondNoise } = difference;
  const smaller = larger === 'left' ? 'right' : 'left';
  const percent = withTrueZero.includes(dimensionOf(unit))
    ? asymmetry(difference.left, difference.right)
    : undefined;
  return {
    ...difference,
    condition: left.condition,
    dates: { left: leftDay.date, right: rightDay.date },
    ...(beyondNoise && larger !== 'even' && lowerIsBetter !== undefined
      ? { ahead: lowerIsBetter ? smaller : larger }
      : {}),
    ...(beyondNoise && percent !== undefined ? { percentOfLarger: percent } : {}),
  };
}
