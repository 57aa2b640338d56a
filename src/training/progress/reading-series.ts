import type { Side } from '../../notation/entries';
import { isoDate } from '../../notation/time/iso-date';
import type { DayReading, MetricProgress, Reading } from '../metric-progress';
import { collapseRepeats } from '../statistics/repeated-readings';
import { type Condition, mainCondition } from './main-condition';

export { type Condition, type ConditionDays, mainCondition } from './main-condition';

/** Readings that may be compared: of one side, taken in one state. Those that name no state are a series of their own. */
export interface ReadingSeries {
  readonly side?: Side;
  readonly condition: Condition;
  /** Whether it was taken in the state that the metric is judged by. */
  readonly isMain: boolean;
  /** In order of day and place; never empty. */
  readonly readings: readonly Reading[];
  /** One mean a day, in order of day. */
  readonly days: readonly DayReading[];
}

/** The readings as one mean a day, in order of day; the order in which they were written does not matter. */
export function dayMeans(readings: readonly Reading[]): readonly DayReading[] {
  const points = readings.map(({ day, value }) => ({ x: day, y: value }));
  return collapseRepeats(points).map(({ x, y, readings: count }) => ({
    date: isoDate(x),
    day: x,
    value: y,
    count,
  }));
}

/**
 * The readings of a metric parted by side and state: warm and cold ones are two populations and are never mixed.
 * The series of the main state come first; within a state left, right, and without a side.
 */
export function readingSeries(metric: Pick<MetricProgress, 'series'>): readonly ReadingSeries[] {
  const main = mainCondition(metric.series.flatMap((one) => one.readings));
  return main.all.flatMap(({ condition }) =>
    metric.series.flatMap(({ side, readings }) => {
      const alike = readings.filter((one) => one.condition === condition);
      if (alike.length === 0) return [];
      return [
        {
          ...(side ? { side } : {}),
          condition,
          isMain: condition === main.condition,
          readings: alike,
          days: dayMeans(alike),
        },
      ];
    }),
  );
}
