import { dayNumber, type IsoDate } from '../../notation/time/iso-date';
import type { DayReading } from '../metric-progress';
import { type NotEstimable, notEstimable } from '../statistics/estimate';
import { comparePace, neededPace, type PaceVerdict } from '../statistics/needed-pace';
import { lineAt, type TheilSenReason } from '../statistics/theil-sen';
import { goalDirection } from './metric-forecast';
import type { MetricTrend } from './metric-trend';

/** The pace that leads to the target by its date, from today. */
export interface PaceNeeded {
  readonly status: 'estimated';
  /** Days measured. */
  readonly n: number;
  /** Where the metric stands: on the line at the latest reading, or at that day's mean without a line. */
  readonly level: number;
  readonly levelFrom: 'line' | 'latest-day';
  readonly today: IsoDate;
  readonly by: IsoDate;
  readonly daysLeft: number;
  /** In the metric's unit for a week; below zero when it has to fall. */
  readonly perWeek: number;
  /** Against the interval of the observed pace, when there is one. */
  readonly comparison: PaceVerdict | NotEstimable<TheilSenReason | 'too-many-ties'>;
}

export type PaceNeededReason = 'no-readings' | 'no-target' | 'no-date' | 'date-passed' | 'target-reached';

/** What the pace is asked for. */
export interface PaceQuestion {
  readonly target?: number | undefined;
  readonly by?: IsoDate | undefined;
  readonly today: IsoDate;
  readonly lowerIsBetter?: boolean | undefined;
}

/** Whether a level is at the target or beyond it. */
export function isAtTarget(level: number, target: number, lowerIsBetter: boolean): boolean {
  return lowerIsBetter ? level <= target : level >= target;
}

/** The pace a series needs from today on to be at the target by the date, beside the pace observed. */
export function paceNeeded(
  days: readonly DayReading[],
  trend: MetricTrend | NotEstimable<TheilSenReason>,
  { target, by, today, lowerIsBetter }: PaceQuestion,
): PaceNeeded | NotEstimable<PaceNeededReason> {
  const n = days.length;
  const latest = days.at(-1);
  if (target === undefined || lowerIsBetter === undefined) return notEstimable(n, 'no-target');
  if (by === undefined) return notEstimable(n, 'no-date');
  if (!latest) return notEstimable(n, 'no-readings', [{ what: 'days', have: 0, need: 1 }]);
  const hasLine = trend.status === 'estimated';
  const level = hasLine ? lineAt(trend.line, trend.line.observed.upper) : latest.value;
  if (isAtTarget(level, target, lowerIsBetter)) return notEstimable(n, 'target-reached');
  const now = dayNumber(today);
  const pace = neededPace({ x: now, y: level }, target, dayNumber(by));
  if (pace === undefined) return notEstimable(n, 'date-passed');
  const observed = hasLine ? trend.line.interval : trend;
  return {
    status: 'estimated',
    n,
    level,
    levelFrom: hasLine ? 'line' : 'latest-day',
    today,
    by,
    daysLeft: dayNumber(by) - now,
    perWeek: 7 * pace,
    comparison: 'status' in observed ? observed : comparePace(pace, observed, goalDirection(lowerIsBetter)),
  };
}
