import { formatQuantity, type Unit } from '../../notation/quantity';
import type { FilterView, MetricView, ReadingsView, SeriesKey } from '../../pages/goal-page-data';
import type { GoalProgress } from '../../training/goal-progress';
import type { MetricProgress } from '../../training/metric-progress';
import type { MetricFigures } from '../../training/progress/metric-figures';
import type { ReadingSeries } from '../../training/progress/reading-series';
import { dayInWords, type PageContext, pagePlace, quantityInWords, say } from '../page/page-context';
import { chartView } from './chart-view';
import {
  noiseSentences,
  paceSentence,
  plateauSentence,
  sidesSentence,
  verdictSentence,
} from './figure-sentences';
import { figuresTable } from './figures-table';
import { conditionInWords, seriesKey, seriesView, sideName } from './series-view';

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
  const { from, target, unit } = metric;
  if (target === undefined) return [];
  const wanted = quantityInWords(context, target, unit);
  return [
    from === undefined
      ? say(context, 'The target is {0}.', wanted)
      : say(context, 'From {0} to {1}.', quantityInWords(context, from, unit), wanted),
  ];
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

/** Every reading, the newest first. Columns in which nothing stands are left out. */
function readingsTable(metric: MetricProgress, context: PageContext): ReadingsView | undefined {
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
      of: seriesKey({ side: series.side, condition: reading.condition }),
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

function sideLabel(side: SeriesKey['side'], context: PageContext): string {
  if (side === 'none') return say(context, 'No side given');
  return sideName(side, context);
}

/** The sides to choose from, when there is more than one. */
function sidesFilter(
  { series }: MetricFigures,
  context: PageContext,
): FilterView<SeriesKey['side'] | 'all'> | undefined {
  const sides = [...new Set(series.map((one) => seriesKey(one).side))];
  if (sides.length < 2) return undefined;
  return {
    label: say(context, 'Side'),
    options: [
      { key: 'all', label: say(context, 'All') },
      ...sides.map((key) => ({ key, label: sideLabel(key, context) })),
    ],
  };
}

/** The states to choose from, when there is more than one; the one that the metric is judged by first. */
function conditionsFilter(
  { conditions }: MetricFigures,
  context: PageContext,
): FilterView<SeriesKey['condition']> | undefined {
  if (conditions.length < 2) return undefined;
  return {
    label: say(context, 'Measured'),
    options: conditions.map(({ condition }) => ({
      key: condition ?? 'none',
      label: condition === undefined ? say(context, 'not said') : conditionInWords(condition, context),
    })),
  };
}

/** A metric: whether and when its target is reached, where it stands, its chart, its figures, all its readings. */
export function metricView(
  goal: GoalProgress,
  metric: MetricProgress,
  figures: MetricFigures,
  context: PageContext,
): MetricView {
  const main = figures.series.filter((one) => one.isMain);
  const note = notice(goal, metric, main, context);
  const table = readingsTable(metric, context);
  const numbers = figuresTable(figures, context);
  const sides = sidesFilter(figures, context);
  const conditions = conditionsFilter(figures, context);
  const lost =
    metric.mismatched > 0 && main.length > 0
      ? [say(context, 'Readings left out because of their unit: {0}.', metric.mismatched)]
      : [];
  return {
    name: metric.name,
    verdicts: goal.closed ? [] : main.flatMap((one) => verdictSentence(one, context)),
    sentences: [
      ...frameSentence(metric, context),
      ...main.flatMap((one) => latestSentence(one, metric, context)),
      ...(goal.closed ? [] : main.flatMap((one) => paceSentence(one, figures, context))),
      ...main.flatMap((one) => plateauSentence(one, context)),
      ...sidesSentence(figures, context),
      ...noiseSentences(main, figures, context),
      ...lost,
    ],
    ...(note === undefined ? {} : { notice: note }),
    ...(main.length === 0
      ? {}
      : {
          chart: chartView(
            goal,
            metric,
            main,
            figures.series.map((one) => seriesView(one, figures.series, metric, context)),
            context,
          ),
        }),
    ...(numbers ? { figures: numbers } : {}),
    ...(table ? { table } : {}),
    ...(sides ? { sides } : {}),
    ...(conditions ? { conditions } : {}),
  };
}
