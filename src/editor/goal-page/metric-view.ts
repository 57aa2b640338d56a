import { formatQuantity, type Unit } from '../../notation/quantity';
import type { ChartPoint, MetricView, SeriesView, TableView } from '../../pages/goal-page-data';
import type { GoalProgress } from '../../training/goal-progress';
import type { MetricProgress, MetricSeries, Reading } from '../../training/metric-progress';
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

/** `Left: 9.5 cm on Tuesday, 24 February, the mean of 3 readings; 5.5 cm are left.` */
function latestSentence(
  series: MetricSeries,
  metric: MetricProgress,
  context: PageContext,
): readonly string[] {
  const { latest, side } = series;
  if (!latest) return [];
  const value = quantityInWords(context, latest.value, metric.unit);
  const date = dayInWords(context, latest.date);
  const reading =
    latest.count === 1
      ? say(context, '{0} on {1}', value, date)
      : say(context, '{0} on {1}, the mean of {2} readings', value, date, latest.count);
  const left = leftToGo(latest.value, metric);
  const rest =
    left === undefined
      ? ''
      : left <= 0
        ? say(context, '; the target is reached')
        : say(context, '; {0} to go', quantityInWords(context, left, metric.unit));
  const sentence =
    side === undefined
      ? say(context, 'Latest: {0}{1}.', reading, rest)
      : side === 'left'
        ? say(context, 'Left: {0}{1}.', reading, rest)
        : say(context, 'Right: {0}{1}.', reading, rest);
  return [sentence];
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

function notice(goal: GoalProgress, metric: MetricProgress, context: PageContext): string | undefined {
  const days = Math.max(0, ...metric.series.map((series) => series.days.length));
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

function conditionInWords(reading: Reading, context: PageContext): string {
  if (reading.condition === undefined) return '';
  return reading.condition === 'warm' ? say(context, 'warm') : say(context, 'cold');
}

function pointText(name: string, reading: string, context: PageContext): string {
  return say(context, '{0}: {1}', name, reading);
}

function seriesView(series: MetricSeries, metric: MetricProgress, context: PageContext): SeriesView {
  const name = sideName(series.side, context);
  const ofDay = new Map<number, Reading>();
  for (const reading of series.readings) if (!ofDay.has(reading.day)) ofDay.set(reading.day, reading);
  const counts = new Map(series.days.map((day) => [day.day, day.count]));
  const days = series.days.flatMap((day): ChartPoint[] => {
    const first = ofDay.get(day.day);
    if (!first) return [];
    const value = quantityInWords(context, day.value, metric.unit);
    const date = dayInWords(context, day.date);
    const words =
      day.count === 1
        ? say(context, '{0}, {1}', value, date)
        : say(context, '{0}, {1}, mean of {2}', value, date, day.count);
    return [
      { day: day.day, value: day.value, text: pointText(name, words, context), place: pagePlace(first) },
    ];
  });
  const repeats = series.readings
    .filter((reading) => (counts.get(reading.day) ?? 0) > 1)
    .map((reading) => ({
      day: reading.day,
      value: reading.value,
      text: pointText(
        name,
        say(
          context,
          '{0}, {1}',
          quantityInWords(context, reading.value, metric.unit),
          dayInWords(context, reading.date),
        ),
        context,
      ),
      place: pagePlace(reading),
    }));
  return { side: series.side ?? 'none', name, days, repeats };
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
        ...(hasConditions ? [conditionInWords(reading, context)] : []),
      ],
    })),
  };
}

/** A metric: where it stands in sentences, its chart, and all its readings. */
export function metricView(goal: GoalProgress, metric: MetricProgress, context: PageContext): MetricView {
  const series = metric.series.map((one) => seriesView(one, metric, context));
  const note = notice(goal, metric, context);
  const table = readingsTable(metric, context);
  const lost =
    metric.mismatched > 0 && series.length > 0
      ? [say(context, 'Readings left out because of their unit: {0}.', metric.mismatched)]
      : [];
  return {
    name: metric.name,
    sentences: [
      ...frameSentence(metric, context),
      ...metric.series.flatMap((one) => latestSentence(one, metric, context)),
      ...lost,
    ],
    ...(note === undefined ? {} : { notice: note }),
    ...(series.length === 0 ? {} : { chart: chartView(goal, metric, series, context) }),
    ...(table ? { table } : {}),
  };
}
