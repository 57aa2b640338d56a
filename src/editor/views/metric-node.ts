import type { Goal, Metric } from '../../journal/journal';
import { type MetricProgress, type MetricSeries, metricProgress } from '../../training/metric-progress';
import { mainCondition } from '../../training/progress/main-condition';
import { entryPlace } from '../../training/session-place';
import { inLines, inOneLine, say, type ViewContext, viewPlace } from './view-context';
import type { ViewNode, ViewPlace } from './view-node';

/** A value of the metric with its unit, when there is one. */
function valueInWords(metric: MetricProgress, value: number, context: ViewContext): string {
  const { words } = context;
  return metric.unit ? words.quantity(value, metric.unit) : words.number(value, 1);
}

/** `left`, `right`, or that no side was written where both are measured. */
function sideInWords(metric: MetricProgress, series: MetricSeries, context: ViewContext): string | undefined {
  if (series.side === 'left') return say(context, 'left');
  if (series.side === 'right') return say(context, 'right');
  return metric.sides ? say(context, 'side not given') : undefined;
}

/** The sides that have a reading in the state that the metric is judged by. */
function judgedSeries(metric: MetricProgress): readonly MetricSeries[] {
  return metric.series.filter(({ latest }) => latest !== undefined);
}

/** That the figures are those of warm or cold readings alone, where both were taken. */
function stateLine(metric: MetricProgress, context: ViewContext): string | undefined {
  const { condition, all } = mainCondition(metric.series.flatMap(({ readings }) => readings));
  if (all.length < 2) return undefined;
  switch (condition) {
    case 'warm':
      return say(context, 'Only readings taken warm count here; others are kept apart.');
    case 'cold':
      return say(context, 'Only readings taken cold count here; others are kept apart.');
    default:
      return say(context, 'Only readings without warm or cold count here; others are kept apart.');
  }
}

function readingCount(count: number, context: ViewContext): string {
  return count === 1 ? say(context, '1 reading') : say(context, '{0} readings', count);
}

/** `left 166°`, or only the value when the metric has no sides. */
function latestInWords(metric: MetricProgress, series: MetricSeries, context: ViewContext): string {
  const side = sideInWords(metric, series, context);
  const value = series.latest ? valueInWords(metric, series.latest.value, context) : '';
  return side === undefined ? value : `${side} ${value}`;
}

function targetInWords(metric: MetricProgress, context: ViewContext): string | undefined {
  if (metric.target === undefined) return undefined;
  return say(context, 'target {0}', valueInWords(metric, metric.target, context));
}

function shareInWords(metric: MetricProgress, context: ViewContext): string | undefined {
  if (metric.shareDone === undefined) return undefined;
  if (metric.shareDone >= 1) return say(context, 'target reached');
  // Rounded down: the whole way is said only when it is done.
  return say(context, '{0} of the way', context.words.quantity(Math.floor(metric.shareDone * 100), '%'));
}

function seriesLine(metric: MetricProgress, series: MetricSeries, context: ViewContext): string | undefined {
  const { first, latest } = series;
  if (!first || !latest) return undefined;
  const { dates } = context.words;
  return inOneLine(
    say(context, '{0} on {1}', latestInWords(metric, series, context), dates.day(latest.date, context.today)),
    first.day === latest.day
      ? undefined
      : say(
          context,
          'first {0} on {1}',
          valueInWords(metric, first.value, context),
          dates.day(first.date, context.today),
        ),
    readingCount(
      series.days.reduce((sum, day) => sum + day.count, 0),
      context,
    ),
    latest.count > 1 ? say(context, 'the latest is the mean of {0}', latest.count) : undefined,
  );
}

function metricLines(metric: MetricProgress, context: ViewContext): string {
  const { from, noise, mismatched } = metric;
  return inLines(
    ...metric.series.map((series) => seriesLine(metric, series, context)),
    stateLine(metric, context),
    inOneLine(
      from === undefined ? undefined : say(context, 'start {0}', valueInWords(metric, from, context)),
      targetInWords(metric, context),
      shareInWords(metric, context),
    ),
    noise === undefined
      ? undefined
      : say(context, 'measuring error ±{0}', valueInWords(metric, noise, context)),
    metric.sides && metric.series.length > 1
      ? say(context, 'The side that has come less far counts.')
      : undefined,
    mismatched === 0
      ? undefined
      : mismatched === 1
        ? say(context, '1 reading is in a unit that does not go with the others')
        : say(context, '{0} readings are in units that do not go with the others', mismatched),
  );
}

/** Where the latest reading stands, else the line of the metric. */
function metricPlace(progress: MetricProgress, metric: Metric, context: ViewContext): ViewPlace {
  const all = progress.series.flatMap((series) => series.readings);
  const { condition } = mainCondition(all);
  const readings = all.filter((one) => one.condition === condition);
  const latest = readings.reduce<(typeof readings)[number] | undefined>(
    (found, one) => (found && found.day > one.day ? found : one),
    undefined,
  );
  return viewPlace(context, latest ?? entryPlace(metric));
}

/** A row for one metric of a goal: latest reading of each side, target, share of the way. */
export function metricNode(
  goal: Goal,
  metric: Metric,
  ordinal: number,
  context: ViewContext,
): { readonly node: ViewNode; readonly progress: MetricProgress } {
  const progress = metricProgress(metric, context.journal.measurements(goal.id, metric.name));
  const count = progress.series.reduce((total, series) => total + series.readings.length, 0);
  const description = inOneLine(
    ...(count === 0
      ? [say(context, 'no reading yet')]
      : judgedSeries(progress).map((series) => latestInWords(progress, series, context))),
    targetInWords(progress, context),
    shareInWords(progress, context),
    count === 0 ? undefined : readingCount(count, context),
  );
  const node: ViewNode = {
    id: `${context.id}#${goal.id}/metric/${ordinal}`,
    kind: 'metric',
    journal: context.id,
    label: metric.name,
    description,
    tooltip: inLines(metric.name, metricLines(progress, context)),
    icon: progress.shareDone === 1 ? 'pass' : 'graph-line',
    accessibilityLabel: inOneLine(metric.name, description),
    place: metricPlace(progress, metric, context),
    goal: goal.id,
    children: [],
  };
  return { node, progress };
}
