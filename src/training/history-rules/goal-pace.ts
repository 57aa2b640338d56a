import type { Goal, Measurement, Metric } from '../../journal/journal';
import type { Unit } from '../../notation/quantity';
import type { Finding } from '../finding';
import { metricProgress } from '../metric-progress';
import { type MetricFigures, metricFigures, type SeriesFigures } from '../progress/metric-figures';
import { MOST_TREND_DAYS } from '../progress/metric-trend';
import type { PaceNeeded } from '../progress/pace-needed';
import { entryPlace, related } from '../session-place';
import type { Interval } from '../statistics/estimate';
import type { CheckContext } from '../week-under-check';
import { message } from '../wording';
import type { HistoryRule } from './history-rule';

/** Readings whose values are looked at for a change: more than a line runs through, repeats and sides counted in. */
const mostReadings = 4 * MOST_TREND_DAYS;

/** A series that needs more than it has shown. */
interface Behind {
  readonly series: SeriesFigures;
  readonly pace: PaceNeeded;
  readonly observed: Interval;
}

function behind(series: SeriesFigures): readonly Behind[] {
  const { pace, trend, verdict, isMain } = series;
  if (!isMain || pace.status === 'not-estimable' || trend.status === 'not-estimable') return [];
  const { perWeekInterval } = trend;
  if ('status' in perWeekInterval || pace.comparison !== 'faster-than-observed') return [];
  // The range of dates is the wider of the two views: where it still holds the date, nothing is said.
  return verdict.code === 'late' || verdict.code === 'not-estimable'
    ? [{ series, pace, observed: perWeekInterval }]
    : [];
}

function inUnit(value: number, unit: Unit | undefined): string {
  // Adding zero keeps a rounded -0.001 from being written as -0.
  const rounded = Number(value.toPrecision(2)) + 0;
  return unit === undefined ? String(rounded) : `${rounded} ${unit}`;
}

function sentence({ name, unit, target }: MetricFigures, { series, pace, observed }: Behind) {
  const { verdict, side } = series;
  const what = side === undefined ? '{0}' : side === 'left' ? '{0} on the left' : '{0} on the right';
  const range = verdict.earliest === verdict.latest ? 'about {7}' : 'between {7} and {8}';
  const arrival = verdict.code === 'late' ? `; at that pace it is there ${range}` : '';
  return message(
    `${what} needs {1} a week to be at {2} on {3}; the readings of {4} days show {5} to {6}${arrival}`,
    name,
    inUnit(pace.perWeek, unit),
    inUnit(target ?? 0, unit),
    pace.by,
    pace.n,
    inUnit(observed.lower, unit),
    inUnit(observed.upper, unit),
    verdict.earliest ?? '',
    verdict.latest ?? '',
  );
}

function finding(goal: Goal, metric: Metric, figures: MetricFigures, worst: Behind): Finding {
  const { pace, observed, series } = worst;
  const { by } = goal.entry;
  return {
    code: 'goal-pace',
    severity: 'information',
    note: goal.note,
    range: by?.range ?? entryPlace(goal).range,
    message: sentence(figures, worst),
    facts: {
      goal: goal.id,
      metric: metric.name,
      ...(series.side === undefined ? {} : { side: series.side }),
      by: pace.by,
      daysMeasured: pace.n,
      neededPerWeek: pace.perWeek,
      observedLower: observed.lower,
      observedUpper: observed.upper,
      ...(series.verdict.latest === undefined ? {} : { latest: series.verdict.latest }),
    },
    related: [related(entryPlace(metric), message('The metric {0}', metric.name))],
    remedies: series.verdict.latest === undefined ? [] : ['move-goal-date'],
  };
}

function checkMetric(context: CheckContext, goal: Goal, metric: Metric): readonly Finding[] {
  const { journal, today } = context;
  const progress = metricProgress(metric, journal.measurements(goal.id, metric.name));
  const figures = metricFigures(progress, { today, by: goal.by });
  // The side that has furthest to go speaks for both.
  const [worst] = figures.series
    .flatMap(behind)
    .sort((one, other) => Math.abs(other.pace.perWeek) - Math.abs(one.pace.perWeek));
  return worst ? [finding(goal, metric, figures, worst)] : [];
}

/** How many readings there are, and the latest. Older ones are only counted, as the line does not run through them. */
function latestReadings(readings: readonly Measurement[]): readonly unknown[] {
  return [readings.length, ...readings.slice(-mostReadings)];
}

function isReading(value: unknown): value is Measurement {
  return typeof value === 'object' && value !== null && 'quantity' in value;
}

/** Whether two inputs are readings of the same values: those of a note are new with every key that is pressed in it. */
function isSameReading(one: unknown, other: unknown): boolean {
  if (!isReading(one) || !isReading(other)) return false;
  const [before, after] = [one.quantity, other.quantity];
  return (
    one.goal === other.goal &&
    one.metric === other.metric &&
    one.day === other.day &&
    one.side === other.side &&
    one.condition === other.condition &&
    before.value === after.value &&
    before.unit === after.unit &&
    before.attempts?.of === after.attempts?.of
  );
}

function openGoalsWithDate({ plan, today }: CheckContext): readonly Goal[] {
  return [...plan.goals.values()].filter(
    ({ by, from, closed }) =>
      !closed && by !== undefined && by >= today && (from === undefined || from <= today),
  );
}

/**
 * The pace that a goal needs from today on is faster than the readings allow for: above the interval of the pace
 * observed, and the forecast does not reach the date. It stands on the goal's date. Nothing is said while the readings
 * are too few for an interval: five days of them, taken in one state.
 *
 * A journal that breaks it, on Wednesday 2026-02-25:
 *
 *     goals.md
 *     - #goal low-split by:2026-03-31
 *     - #why the duo act
 *     - #metric gap from:14cm to:0cm
 *     2026-01-26.md
 *     - #measure low-split gap 14cm
 *     2026-02-02.md
 *     - #measure low-split gap 13.5cm
 *     2026-02-09.md
 *     - #measure low-split gap 13cm
 *     2026-02-16.md
 *     - #measure low-split gap 12.5cm
 *     2026-02-23.md
 *     - #measure low-split gap 12cm -- half a centimetre a week, and 2.4 cm a week are needed
 *
 * A journal that does not:
 *
 *     goals.md
 *     - #goal low-split by:2026-09-30
 *     - #why the duo act
 *     - #metric gap from:14cm to:0cm
 *     2026-01-26.md
 *     - #measure low-split gap 14cm
 *     2026-02-02.md
 *     - #measure low-split gap 13.5cm
 *     2026-02-09.md
 *     - #measure low-split gap 13cm
 *     2026-02-16.md
 *     - #measure low-split gap 12.5cm
 *     2026-02-23.md
 *     - #measure low-split gap 12cm
 */
export const goalPace: HistoryRule = {
  code: 'goal-pace',
  inputs: (context) => [
    context.plan,
    context.today,
    ...openGoalsWithDate(context).flatMap((goal) => latestReadings(context.journal.measurements(goal.id))),
  ],
  isSame: isSameReading,
  check: (context) =>
    openGoalsWithDate(context).flatMap((goal) =>
      goal.metrics.flatMap((metric) => checkMetric(context, goal, metric)),
    ),
};
