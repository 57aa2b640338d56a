import type { Message } from '../finding';
import type { MetricProgress, Reading } from '../metric-progress';
import type { Interval, NotEstimable } from '../statistics/estimate';
import {
  minimalDetectableChange,
  type TypicalError,
  typicalErrorFromRepeats,
} from '../statistics/measuring-error';
import { assumedError } from './assumed-error';

/** How much readings of a metric wander by themselves. */
export interface MeasuringNoise {
  /**
   * `repeats`: the athlete's own repeated readings. `few-repeats`: the same, from fewer than are recommended, because
   * they wander more than would be assumed. `written`: the metric's `noise:`. `assumed`: nobody measured it.
   */
  readonly basis: 'repeats' | 'few-repeats' | 'written' | 'assumed';
  /** Standard deviation of single readings of an unchanged quantity, in the metric's unit. */
  readonly typicalError: number;
  /** Repeated readings that it stands on; 0 when it is written or assumed. */
  readonly n: number;
  /** Of the typical error, when it comes from repeats. */
  readonly interval?: Interval;
  /** The smallest change between two single readings that is more than noise, at 95 %. */
  readonly detectableChange: number;
  /** What the athlete's own repeats say, used or not: it names what is missing. */
  readonly own: TypicalError | NotEstimable<'no-repeats'>;
  /** Where an assumed error comes from. */
  readonly source?: Message;
}

/** The readings of each day and state; only such are repeats of each other. */
function repeatedDays(readings: readonly Reading[]): readonly (readonly number[])[] {
  const groups = new Map<string, number[]>();
  for (const { day, condition, value } of readings) {
    const key = `${day} ${condition}`;
    groups.set(key, [...(groups.get(key) ?? []), value]);
  }
  // In order of size, so that the order of the notes cannot be seen in the last digit.
  return [...groups.values()].map((values) => values.sort((a, b) => a - b));
}

/**
 * The measuring error of a metric on one side. The athlete's own repeats come first, once there are as many as is
 * recommended (three days, six readings more than days); then what the metric's `noise:` says, taken for the typical
 * error of one reading; then an assumed value. Repeats that are too few are used in place of an assumed value only
 * when they wander more than it: a single pair that happens to agree would call every change real.
 *
 * Repeats of one day leave out what differs from day to day, so the true error is larger.
 *
 * @param readings of the side, in any state
 * @returns `undefined` when the metric has no unit yet
 */
export function measuringNoise(
  metric: Pick<MetricProgress, 'unit' | 'noise'>,
  readings: readonly Reading[],
): MeasuringNoise | undefined {
  const { unit } = metric;
  if (unit === undefined) return undefined;
  const own = typicalErrorFromRepeats(repeatedDays(readings));
  const finish = (
    typicalError: number,
    rest: Pick<MeasuringNoise, 'basis' | 'n' | 'interval' | 'source'>,
  ): MeasuringNoise => ({
    ...rest,
    typicalError,
    detectableChange: minimalDetectableChange(typicalError),
    own,
  });
  const usable = own.status === 'estimated' && own.typicalError > 0 ? own : undefined;
  if (usable && usable.shortOfRecommended.length === 0) {
    return finish(usable.typicalError, { basis: 'repeats', n: usable.n, interval: usable.interval });
  }
  if (metric.noise !== undefined && metric.noise > 0) return finish(metric.noise, { basis: 'written', n: 0 });
  const assumed = assumedError(
    unit,
    readings.map(({ value }) => value),
    readings.flatMap(({ written }) => (written.attempts ? [written.attempts.of] : [])),
  );
  if (usable && usable.typicalError > assumed.typicalError) {
    return finish(usable.typicalError, { basis: 'few-repeats', n: usable.n, interval: usable.interval });
  }
  return finish(assumed.typicalError, { basis: 'assumed', n: 0, source: assumed.source });
}
