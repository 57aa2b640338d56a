import type { ChartPoint, SeriesKey, SeriesView } from '../../pages/goal-page-data';
import type { DayReading, MetricProgress, Reading } from '../../training/metric-progress';
import type { SeriesFigures } from '../../training/progress/metric-figures';
import type { Condition, ReadingSeries } from '../../training/progress/reading-series';
import { twoSidedZ } from '../../training/statistics/normal-quantile';
import {
  dayInWords,
  type PageContext,
  pagePlace,
  preciseInWords,
  quantityInWords,
  say,
} from '../page/page-context';
import { trendView } from './trend-view';

/** Which series a page means. */
export function seriesKey({
  side,
  condition,
}: {
  readonly side?: SeriesFigures['side'] | undefined;
  readonly condition?: Condition;
}): SeriesKey {
  return { side: side ?? 'none', condition: condition ?? 'none' };
}

/** What a side is called; readings without one are just readings. */
export function sideName(side: ReadingSeries['side'], context: PageContext): string {
  if (side === undefined) return say(context, 'Readings');
  return side === 'left' ? say(context, 'Left') : say(context, 'Right');
}

/** `warm`, `cold`, or nothing. */
export function conditionInWords(condition: Condition, context: PageContext): string {
  if (condition === undefined) return '';
  return condition === 'warm' ? say(context, 'warm') : say(context, 'cold');
}

/** A point for one reading of a series. */
function readingPoint(
  reading: Reading,
  name: string,
  metric: MetricProgress,
  context: PageContext,
): ChartPoint {
  const value = quantityInWords(context, reading.value, metric.unit);
  const state = conditionInWords(reading.condition, context);
  const date = dayInWords(context, reading.date);
  const words =
    state === '' ? say(context, '{0}, {1}', value, date) : say(context, '{0}, {1}, {2}', value, state, date);
  return {
    day: reading.day,
    value: reading.value,
    text: say(context, '{0}: {1}', name, words),
    place: pagePlace(reading),
  };
}

/** A point for the readings of one day; it leads to the first of them. */
function dayPoint(
  series: ReadingSeries,
  day: DayReading,
  name: string,
  metric: MetricProgress,
  context: PageContext,
): readonly ChartPoint[] {
  const first = series.readings.find((reading) => reading.day === day.day);
  if (!first) return [];
  const point = readingPoint({ ...first, value: day.value }, name, metric, context);
  return [
    day.count === 1 ? point : { ...point, text: say(context, '{0}, mean of {1}', point.text, day.count) },
  ];
}

/** What the points in other states than the line's are called. */
function othersName(others: readonly ReadingSeries[], context: PageContext): string | undefined {
  const states = new Set(others.map((one) => one.condition));
  if (states.size === 0) return undefined;
  if (states.size > 1 || states.has(undefined)) return say(context, 'measured in another state');
  return states.has('cold') ? say(context, 'measured cold') : say(context, 'measured warm');
}

/** What the noise of a series is called: its size, and whether it was measured or is assumed. */
function noiseLabel({ noise }: SeriesFigures, reach: number, metric: MetricProgress, context: PageContext) {
  const size = preciseInWords(context, reach, metric.unit);
  switch (noise.basis) {
    case 'assumed':
      return say(context, 'measuring noise, ±{0} (assumed)', size);
    case 'written':
      return say(context, 'measuring noise, ±{0} (as written)', size);
    default:
      return say(context, 'measuring noise, ±{0} (from {1} repeated readings)', size, noise.n);
  }
}

/** The readings of one side in one state, and beside them those in another state. */
export function seriesView(
  series: SeriesFigures,
  all: readonly SeriesFigures[],
  metric: MetricProgress,
  context: PageContext,
): SeriesView {
  const name = sideName(series.side, context);
  const counts = new Map(series.days.map((day) => [day.day, day.count]));
  const others = all.filter((one) => one !== series && one.side === series.side);
  const apart = othersName(others, context);
  const trend = trendView(series, metric);
  const reach = twoSidedZ(0.95) * series.noise.typicalError;
  return {
    ...seriesKey(series),
    name,
    isMain: series.isMain,
    days: series.days.flatMap((day) => dayPoint(series, day, name, metric, context)),
    repeats: series.readings
      .filter((reading) => (counts.get(reading.day) ?? 0) > 1)
      .map((reading) => readingPoint(reading, name, metric, context)),
    others: others.flatMap((one) =>
      one.readings.map((reading) => readingPoint(reading, name, metric, context)),
    ),
    ...(apart === undefined ? {} : { othersName: apart }),
    ...(trend ? { trend } : {}),
    noise: { reach, label: noiseLabel(series, reach, metric, context) },
  };
}
