import { type IsoDate, isoDate } from '../../notation/time/iso-date';
import type { DayReading } from '../metric-progress';
import { type Interval, type NotEstimable, notEstimable } from '../statistics/estimate';
import { mannKendall, type TrendReason, type TrendTest } from '../statistics/mann-kendall';
import { type TheilSenLine, type TheilSenReason, theilSen } from '../statistics/theil-sen';

/** The course of one series, from the mean of each day. */
export interface MetricTrend {
  readonly status: 'estimated';
  /** Days that it stands on. */
  readonly n: number;
  readonly readings: number;
  readonly first: IsoDate;
  readonly last: IsoDate;
  /** Earlier days that were left out because there are too many. */
  readonly leftOut: number;
  /** `x` is the day number. */
  readonly line: TheilSenLine;
  /** Slope in the metric's unit for a week. */
  readonly perWeek: number;
  /** At 95 %. */
  readonly perWeekInterval: Interval | NotEstimable<'too-few-points' | 'too-many-ties'>;
  /** Whether there is a steady rise or fall at all. */
  readonly test: TrendTest | NotEstimable<TrendReason>;
}

/**
 * The latest days that a line is drawn through: a year of three a week. Every pair of days is looked at, so more would
 * only slow it, and say less about the pace of today. No source.
 */
export const MOST_TREND_DAYS = 150;

/** Whether something could not be given. */
export function isRefused<Reason extends string>(
  value: object | NotEstimable<Reason>,
): value is NotEstimable<Reason> {
  return 'status' in value && value.status === 'not-estimable';
}

/** The Theil-Sen line and the Mann-Kendall test of a series, repeats of a day taken as one. */
export function metricTrend(days: readonly DayReading[]): MetricTrend | NotEstimable<TheilSenReason> {
  const used = days.slice(-MOST_TREND_DAYS);
  const points = used.map(({ day, value }) => ({ x: day, y: value }));
  const line = theilSen(points);
  if (line.status === 'not-estimable') return line;
  const { interval } = line;
  return {
    status: 'estimated',
    n: used.length,
    readings: used.reduce((sum, { count }) => sum + count, 0),
    first: isoDate(line.observed.lower),
    last: isoDate(line.observed.upper),
    leftOut: days.length - used.length,
    line,
    perWeek: 7 * line.slope,
    perWeekInterval:
      'status' in interval
        ? notEstimable(interval.n, interval.reason, interval.missing)
        : { lower: 7 * interval.lower, upper: 7 * interval.upper },
    test: mannKendall(points),
  };
}
