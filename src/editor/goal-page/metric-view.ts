import { formatQuantity, type Unit } from '../../notation/quantity';
import type { ChartPoint, MetricView, SeriesView, TableView } from '../../pages/goal-page-data';
import type { GoalProgress } from '../../training/goal-progress';
import type { DayReading, MetricProgress, MetricSeries, Reading } from '../../training/metric-progress';
import { type Condition, type ReadingSeries, readingSeries } from '../../training/progress/reading-series';
import { chartView } from './chart-view';
import { dayInWords, type PageContext, pagePlace, quantityInWords, say } from './page-context';

/** What stands before a sentence about one side. */
function sideName(side: MetricSeries['side'], context: PageContext): string {
  if (side === undefined) return say(context, 'Readings');
  return side === 'left' ? say(context, 'Left') : say(context, 'Right');
}

function leftToGo(latest: number, metric: MetricProgress): number | undefined {
  const { target, lowerIsBetter } = metric;
  if (target === undefined || lowerIsBetter === undefined) return undefined;
  return lowerIsBetter ? latest - target : target - latest;
}

/** `Left: 9.5 cm on Tuesday, 24 February, the mean of 3 readings; 5.5 cm to go.` */
function latestSentence(
  series: ReadingSeries,
  metric: MetricProgress,
  context: PageContext,
): readonly string[] {
  const latest = series.days.at(-1);
  if (!latest) return [];
  const value = quantityInWords(context, latest.value, metric.unit);
  const date = dayInWords(context, latest.date);
  const state = conditionInWords(series.condition, context);
  const when =
    state === ''
      ? say(context, '{0} on {1}', value, date)
      : say(context, '{0}, {1}, on {2}', value, state, date);
  const reading =
    latest.count === 1 ? when : say(context, '{0}, the mean of {1} readings', when, latest.count);
  const left = leftToGo(latest.value, metric);
  const rest =
    left === undefined
      ? ''
      : left <= 0
        ? say(context, '; the target is reached')
        : say(context, '; {0} to go', quantityInWords(context, left, metric.unit));
  if (series.side === 'left') return [say(context, 'Left: {0}{1}.', reading, rest)];
  return series.side === 'right'
    ? [say(context, 'Right: {0}{1}.', reading, rest)]
    : [say(context, 'Latest: {0}{1}.', reading, rest)];
}

function frameSentence(metric: MetricProgress, context: PageContext): readonly string[] {
  const { from, target, noise, unit } = metric;
  const sentences: string[] = [];
  if (target !== undefined) {
    const wanted = quantityInWords(context, target, unit);
    sentences.push(
      from === undefined
        ? say(context, 'The target is {0}.', wanted)
        : say(context, 'From {0} to {1}.', quantityInWords(context, from, unit), wanted),
    );
  }
  if (noise !== undefined) {
    const error = quantityInWords(context, noise, unit);
    sentences.push(say(context, 'The measuring itself has an error of {0}.', error));
  }
  return sentences.length === 0 ? [] : [sentences.join(' ')];
}

function notice(
  goal: GoalProgress,
  metric: MetricProgress,
  main: readonly ReadingSeries[],
  context: PageContext,
): string | undefined {
  const days = Math.max(0, ...main.map((series) => series.days.length));
  const unit: Unit = metric.unit ?? 'cm';
  const example = formatQuantity({ value: metric.from ?? 10, unit });
  const line = `#measure ${goal.id} ${metric.name} ${example}`;
  if (metric.mismatched > 0 && days === 0) {
    return say(context, 'No reading can be used: their units do not go with this metric.');
  }
  if (days === 0) {
    return say(context, 'No readings yet. Write one in the note of a day: {0}', line);
  }
  return days === 1
    ? say(context, 'Not enough readings yet: two days are needed to see a change, and there is one.')
    : undefined;
}

function conditionInWords(condition: Condition, context: PageContext): string {
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

/** The readings of one side in the state that the metric is judged by, and beside them those in another state. */
function seriesView(
  series: ReadingSeries,
  all: readonly ReadingSeries[],
  metric: MetricProgress,
  context: PageContext,
): SeriesView {
  const name = sideName(series.side, context);
  const counts = new Map(series.days.map((day) => [day.day, day.count]));
  const others = all.filter((one) => !one.isMain && one.side === series.side);
  return {
    side: series.side ?? 'none',
    name,
    days: series.days.flatMap((day) => dayPoint(series, day, name, metric, context)),
    repeats: series.readings
      .filter((reading) => (counts.get(reading.day) ?? 0) > 1)
      .map((reading) => readingPoint(reading, name, metric, context)),
    others: others.flatMap((one) =>
      one.readings.map((reading) => readingPoint(reading, name, metric, context)),
    ),
  };
}

/** What the points in another state than the line's are called. */
function otherStates(all: readonly ReadingSeries[], context: PageContext): string | undefined {
  const states = new Set(all.filter((one) => !one.isMain).map((one) => one.condition));
  if (states.size === 0) return undefined;
  if (states.size > 1 || states.has(undefined)) return say(context, 'measured in another state');
  return states.has('cold') ? say(context, 'measured cold') : say(context, 'measured warm');
}

/** Every reading, the newest first. Columns in which nothing stands are left out. */
function readingsTable(metric: MetricProgress, context: PageContext): TableView | undefined {
  const readings = metric.series
    .flatMap((series) => series.readings.map((reading) => ({ series, reading })))
    .sort(
      (one, other) =>
        other.reading.day - one.reading.day || one.reading.range.start - other.reading.range.start,
    );
  if (readings.length === 0) return undefined;
  const hasSides = readings.some(({ series }) => series.side !== undefined);
  const hasConditions = readings.some(({ reading }) => reading.condition !== undefined);
  return {
    caption: say(context, 'Readings of {0} ({1})', metric.name, readings.length),
    head: [
      say(context, 'Day'),
      say(context, 'Value'),
      ...(hasSides ? [say(context, 'Side')] : []),
      ...(hasConditions ? [say(context, 'Measured')] : []),
    ],
    rows: readings.map(({ series, reading }) => ({
      place: pagePlace(reading),
      cells: [
        context.words.dates.day(reading.date, context.today),
        reading.written.attempts
          ? say(context, '{0} of {1}', reading.written.attempts.successes, reading.written.attempts.of)
          : quantityInWords(context, reading.value, metric.unit),
        ...(hasSides ? [series.side === undefined ? '' : sideName(series.side, context)] : []),
        ...(hasConditions ? [conditionInWords(reading.condition, context)] : []),
      ],
    })),
  };
}

/** A metric: where it stands in sentences, its chart, and all its readings. */
export function metricView(goal: GoalProgress, metric: MetricProgress, context: PageContext): MetricView {
  const all = readingSeries(metric);
  const main = all.filter((one) => one.isMain);
  const series = main.map((one) => seriesView(one, all, metric, context));
  const note = notice(goal, metric, main, context);
  const table = readingsTable(metric, context);
  const others = otherStates(all, context);
  const lost =
    metric.mismatched > 0 && series.length > 0
      ? [say(context, 'Readings left out because of their unit: {0}.', metric.mismatched)]
      : [];
  return {
    name: metric.name,
    sentences: [
      ...frameSentence(metric, context),
      ...main.flatMap((one) => latestSentence(one, metric, context)),
      ...lost,
    ],
    ...(note === undefined ? {} : { notice: note }),
    ...(series.length === 0 ? {} : { chart: chartView(goal, metric, main, { series, others }, context) }),
    ...(table ? { table } : {}),
  };
}
