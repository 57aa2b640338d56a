import type { Side } from '../../notation/entries';
import type { Unit } from '../../notation/quantity';
import { type DayNumber, dayNumber, type IsoDate } from '../../notation/time/iso-date';
import type { DayReading, MetricProgress } from '../metric-progress';
import { type NotEstimable, notEstimable } from '../statistics/estimate';
import type { TheilSenReason } from '../statistics/theil-sen';
import { type MeasuringNoise, measuringNoise } from './measuring-noise';
import {
  type MetricForecast,
  type MetricForecastReason,
  metricForecast,
  type TargetMet,
} from './metric-forecast';
import { type MetricTrend, metricTrend } from './metric-trend';
import { type MetricVerdict, metricVerdict } from './metric-verdict';
import { isAtTarget, type PaceNeeded, type PaceNeededReason, paceNeeded } from './pace-needed';
import { type PlateauCheck, type PlateauReason, plateauCheck } from './plateau';
import { changeSince, type ReadingChange } from './reading-change';
import {
  type Condition,
  type ConditionDays,
  mainCondition,
  type ReadingSeries,
  readingSeries,
} from './reading-series';
import { type SideComparison, type SideComparisonReason, sideComparison } from './side-comparison';

/** All that can be said of the readings of one side in one state. */
export interface SeriesFigures extends ReadingSeries {
  readonly noise: MeasuringNoise;
  readonly sinceFirst: ReadingChange | NotEstimable<'too-few-days'>;
  readonly sinceLast: ReadingChange | NotEstimable<'too-few-days'>;
  readonly trend: MetricTrend | NotEstimable<TheilSenReason>;
  readonly forecast: MetricForecast | TargetMet | NotEstimable<MetricForecastReason | 'no-target'>;
  readonly pace: PaceNeeded | NotEstimable<PaceNeededReason>;
  /** The first day whose mean was at the target. */
  readonly reachedOn?: IsoDate;
  readonly plateau: PlateauCheck | NotEstimable<PlateauReason | 'target-reached'>;
  readonly verdict: MetricVerdict;
}

/** All that can be said of a metric. Series that are not of the main state are described, never judged by. */
export interface MetricFigures {
  readonly name: string;
  readonly unit?: Unit;
  readonly target?: number;
  readonly by?: IsoDate;
  readonly lowerIsBetter?: boolean;
  /** The state that it is judged by: the one measured on most days. */
  readonly condition: Condition;
  readonly conditions: readonly ConditionDays[];
  /** Main state first, then left, right, and without a side. */
  readonly series: readonly SeriesFigures[];
  readonly sides?: SideComparison | NotEstimable<SideComparisonReason>;
}

/** What a metric's figures are worked out for. */
export interface FiguresQuestion {
  readonly today: IsoDate;
  /** The goal's date. */
  readonly by?: IsoDate | undefined;
  /** Days of the sessions done for the goal, one entry a session. */
  readonly sessionDays?: readonly DayNumber[];
}

function seriesFigures(
  series: ReadingSeries,
  noise: MeasuringNoise,
  metric: MetricProgress,
  { today, by, sessionDays = [] }: FiguresQuestion,
): SeriesFigures {
  const { days } = series;
  const { target, lowerIsBetter } = metric;
  const trend = metricTrend(days);
  const hasTarget = target !== undefined && lowerIsBetter !== undefined;
  const forecast = hasTarget
    ? metricForecast(trend, target, lowerIsBetter)
    : notEstimable(days.length, 'no-target');
  const reachedOn = hasTarget
    ? days.find(({ value }) => isAtTarget(value, target, lowerIsBetter))?.date
    : undefined;
  return {
    ...series,
    noise,
    sinceFirst: changeSince('first', days, noise, lowerIsBetter),
    sinceLast: changeSince('last', days, noise, lowerIsBetter),
    trend,
    forecast,
    pace: paceNeeded(days, trend, { target, by, today, lowerIsBetter }),
    ...(reachedOn === undefined ? {} : { reachedOn }),
    plateau:
      reachedOn === undefined
        ? plateauCheck(days, sessionDays, noise, today)
        : notEstimable(days.length, 'target-reached'),
    verdict: metricVerdict({ forecast, reachedOn, by, today }),
  };
}

/** The metric as it was on the day `today`: without readings that are dated later. */
function upTo(metric: MetricProgress, today: IsoDate): MetricProgress {
  const last = dayNumber(today);
  const series = metric.series.flatMap((one) => {
    const readings = one.readings.filter(({ day }) => day <= last);
    return readings.length === 0 ? [] : [{ ...one, readings }];
  });
  return { ...metric, series };
}

function comparedSides(
  metric: MetricProgress,
  series: readonly SeriesFigures[],
): Pick<MetricFigures, 'sides'> {
  const sided = series.filter(({ side }) => side !== undefined);
  if (metric.unit === undefined || (sided.length === 0 && !metric.sides)) return {};
  const typicalError = Math.max(0, ...sided.map(({ noise }) => noise.typicalError));
  return { sides: sideComparison(series, metric.unit, typicalError, metric.lowerIsBetter) };
}

/** The figures of a metric, from its readings up to the day `today`. */
export function metricFigures(all: MetricProgress, question: FiguresQuestion): MetricFigures {
  const metric = upTo(all, question.today);
  const readings = metric.series.flatMap((one) => one.readings);
  const noises = new Map<Side | undefined, MeasuringNoise>();
  for (const one of metric.series) {
    const noise = measuringNoise(metric, one.readings);
    if (noise) noises.set(one.side, noise);
  }
  const series = readingSeries(metric).flatMap((one) => {
    const noise = noises.get(one.side);
    return noise ? [seriesFigures(one, noise, metric, question)] : [];
  });
  const main = mainCondition(readings);
  const { unit, target, lowerIsBetter } = metric;
  return {
    name: metric.name,
    ...(unit ? { unit } : {}),
    ...(target === undefined ? {} : { target }),
    ...(question.by === undefined ? {} : { by: question.by }),
    ...(lowerIsBetter === undefined ? {} : { lowerIsBetter }),
    condition: main.condition,
    conditions: main.all,
    series,
    ...comparedSides(metric, series),
  };
}

/** The latest day of a series. */
export function latestDay(series: Pick<ReadingSeries, 'days'>): DayReading | undefined {
  return series.days.at(-1);
}
