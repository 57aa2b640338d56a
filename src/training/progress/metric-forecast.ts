import { type IsoDate, isoDate } from '../../notation/time/iso-date';
import { type NotEstimable, notEstimable } from '../statistics/estimate';
import { type ForecastReason, forecastTarget, type GoalDirection } from '../statistics/forecast';
import type { TheilSenReason } from '../statistics/theil-sen';
import type { MetricTrend } from './metric-trend';

/** When a series arrives at its target, if it goes on as it went. */
export interface MetricForecast {
  readonly status: 'estimated';
  /** Days measured. */
  readonly n: number;
  readonly at: IsoDate;
  /** With the fast end of the slope's interval; may lie before the latest reading. */
  readonly earliest: IsoDate;
  readonly latest: IsoDate;
  /** Days from the first to the latest reading, and from there to `latest`. */
  readonly observedDays: number;
  readonly aheadDays: number;
  /** The range lies further ahead than the readings reach back: to be said wherever it is shown. */
  readonly beyondObservedSpan: boolean;
}

/** The line has come to the target. */
export interface TargetMet {
  readonly status: 'reached';
  readonly n: number;
  readonly at: IsoDate;
}

/** `too-far-ahead`: the range ends more than ten years after the latest reading, which says nothing. */
export type MetricForecastReason = ForecastReason | 'too-far-ahead';

const mostDaysAhead = 3650;

/** The direction in which a metric gets better. */
export function goalDirection(lowerIsBetter: boolean): GoalDirection {
  return lowerIsBetter ? 'falling' : 'rising';
}

/** The forecast of a series in dates; earliest and latest are rounded outwards. */
export function metricForecast(
  trend: MetricTrend | NotEstimable<TheilSenReason>,
  target: number,
  lowerIsBetter: boolean,
): MetricForecast | TargetMet | NotEstimable<MetricForecastReason> {
  const line = trend.status === 'estimated' ? trend.line : trend;
  const forecast = forecastTarget(line, target, goalDirection(lowerIsBetter));
  if (forecast.status === 'not-estimable') return forecast;
  const { n } = forecast;
  if (forecast.status === 'reached') return { status: 'reached', n, at: isoDate(Math.round(forecast.at)) };
  const { observedSpan, ahead, beyondObservedSpan } = forecast.extrapolation;
  if (ahead > mostDaysAhead) return notEstimable(n, 'too-far-ahead');
  return {
    status: 'estimated',
    n,
    at: isoDate(Math.round(forecast.at)),
    earliest: isoDate(Math.floor(forecast.earliest)),
    latest: isoDate(Math.ceil(forecast.latest)),
    observedDays: observedSpan,
    aheadDays: Math.ceil(ahead),
    beyondObservedSpan,
  };
}
