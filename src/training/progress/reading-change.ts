import type { DayReading } from '../metric-progress';
import { type NotEstimable, notEstimable } from '../statistics/estimate';
import { withinMeasuringNoise } from '../statistics/measuring-error';
import { twoSidedZ } from '../statistics/normal-quantile';
import type { MeasuringNoise } from './measuring-noise';

/** What lies between two days of a series. */
export interface ReadingChange {
  readonly status: 'estimated';
  /** Readings of both days. */
  readonly n: number;
  readonly from: DayReading;
  readonly to: DayReading;
  /** Later minus earlier, in the metric's unit. */
  readonly change: number;
  readonly direction: 'nearer' | 'further' | 'same' | 'unknown';
  /** The largest change that measuring error alone explains at 95 %, for as many readings as the days have. */
  readonly noise: number;
  readonly withinNoise: boolean;
}

/**
 * The largest change between the means of two days that measuring error alone explains at 95 %:
 * z x typical error x sqrt(1/readings + 1/readings), the minimal detectable change when each has one reading.
 */
export function noiseBetween(
  typicalError: number,
  one: Pick<DayReading, 'count'>,
  other: Pick<DayReading, 'count'>,
): number {
  return twoSidedZ(0.95) * typicalError * Math.sqrt(1 / one.count + 1 / other.count);
}

function directionOf(change: number, lowerIsBetter: boolean | undefined): ReadingChange['direction'] {
  if (change === 0) return 'same';
  if (lowerIsBetter === undefined) return 'unknown';
  return change < 0 === lowerIsBetter ? 'nearer' : 'further';
}

/** The change from one day of a series to a later one, held against its noise. */
export function readingChange(
  from: DayReading,
  to: DayReading,
  noise: MeasuringNoise,
  lowerIsBetter?: boolean,
): ReadingChange {
  const change = to.value - from.value;
  const largest = noiseBetween(noise.typicalError, from, to);
  return {
    status: 'estimated',
    n: from.count + to.count,
    from,
    to,
    change,
    direction: directionOf(change, lowerIsBetter),
    noise: largest,
    withinNoise: withinMeasuringNoise(change, largest),
  };
}

/** The change up to the latest day of a series: since its first day, or since the one before the latest. */
export function changeSince(
  which: 'first' | 'last',
  days: readonly DayReading[],
  noise: MeasuringNoise,
  lowerIsBetter?: boolean,
): ReadingChange | NotEstimable<'too-few-days'> {
  const from = days.at(which === 'first' ? 0 : -2);
  const to = days.at(-1);
  if (!from || !to || days.length < 2) {
    return notEstimable(days.length, 'too-few-days', [{ what: 'days', have: days.length, need: 2 }]);
  }
  return readingChange(from, to, noise, lowerIsBetter);
}
