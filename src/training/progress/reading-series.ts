import type { Side } from '../../notation/entries';
import { isoDate } from '../../notation/time/iso-date';
import type { DayReading, MetricProgress, Reading } from '../metric-progress';
import { collapseRepeats } from '../statistics/repeated-readings';

/** The state in which a reading was taken; `undefined` where the note does not say. */
export type Condition = 'warm' | 'cold' | undefined;

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

/** How many days of a metric were measured in a state. */
export interface ConditionDays {
  readonly condition: Condition;
  /** Days with such a reading, of any side. */
  readonly days: number;
}

/** The state that a metric is judged by, and all that there are. */
export interface MainCondition {
  readonly condition: Condition;
  /** The one that is judged by first. */
  readonly all: readonly ConditionDays[];
}

const conditions: readonly Condition[] = ['warm', 'cold', undefined];

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
 * The state that a metric is judged by: the one with readings of the most days, of several the one measured last,
 * then warm before cold before unsaid. The same for both sides, so that they can be compared.
 */
export function mainCondition(readings: readonly Reading[]): MainCondition {
  const counted = conditions.flatMap((condition) => {
    const days = readings.filter((one) => one.condition === condition).map(({ day }) => day);
    if (days.length === 0) return [];
    return [{ condition, days: new Set(days).size, last: Math.max(...days) }];
  });
  counted.sort((one, other) => other.days - one.days || other.last - one.last);
  return {
    condition: counted[0]?.condition,
    all: counted.map(({ condition, days }) => ({ condition, days })),
  };
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
