import type { NotePath } from '../journal/note';
import type { IsoDate } from '../notation/time/iso-date';
import { formatTimeSpan } from '../notation/time/wall-clock';
import { type GoalProgress, goalProgress } from '../training/goal-progress';
import type { MetricProgress, MetricSeries } from '../training/metric-progress';
import { weekReader } from '../training/training-week';
import { printedPlace } from './printed-place';
import type { JournalsToRead, JournalToRead } from './read-journals';
import { terminalJson, terminalLine } from './terminal-text';

/** The goals of one journal as `progress` prints them. */
export interface JournalProgress {
  /** The journal's folder; empty for the folder that was given. */
  readonly journal: NotePath;
  readonly today: IsoDate;
  readonly goals: readonly GoalProgress[];
}

function progressOf({ journal, today }: JournalToRead): JournalProgress {
  const weeks = weekReader(journal, today);
  const goals = [...journal.plan.goals.keys()].flatMap(
    (id) => goalProgress(journal, id, { today, weeks }) ?? [],
  );
  return { journal: journal.root, today, goals };
}

/** How far every goal of every journal has come. */
export function progressReport({ journals }: JournalsToRead): readonly JournalProgress[] {
  return journals.map(progressOf);
}

function isObject(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

/** `value` with each note and range in it turned into file, line and column. */
function withPrintedPlaces(value: unknown, { journal }: JournalToRead): unknown {
  const turn = (inner: unknown): unknown => {
    if (Array.isArray(inner)) return inner.map(turn);
    if (!isObject(inner)) return inner;
    const { note, range, ...rest } = inner;
    const turned = Object.fromEntries(Object.entries(rest).map(([key, each]) => [key, turn(each)]));
    if (typeof note !== 'string' || !isObject(range)) return turned;
    return {
      ...turned,
      ...printedPlace(journal, note, { start: Number(range.start), end: Number(range.end) }),
    };
  };
  return turn(value);
}

/** The report as JSON: `{ today, journals: [{ journal, today, goals }] }`. The private reasons are not in it. */
export function progressJson(read: JournalsToRead): string {
  const journals = read.journals.map((one) => withPrintedPlaces(progressOf(one), one));
  return `${terminalJson({ today: read.today, journals })}\n`;
}

function amount(value: number, { unit }: MetricProgress): string {
  return `${Number(value.toFixed(2))}${unit === undefined ? '' : ` ${unit}`}`;
}

function seriesWords(metric: MetricProgress, { side, latest, readings, shareDone }: MetricSeries): string {
  const name = side === undefined ? metric.name : `${metric.name}, ${side}`;
  const start = metric.from === undefined ? [] : [`from ${amount(metric.from, metric)}`];
  const target = metric.target === undefined ? [] : [`to ${amount(metric.target, metric)}`];
  const now = latest === undefined ? [] : [`latest ${amount(latest.value, metric)} on ${latest.date}`];
  const share = shareDone === undefined ? [] : [`${Math.round(100 * shareDone)} % of the way`];
  const count = readings.length === 1 ? '1 reading' : `${readings.length} readings`;
  return `${name}: ${[...start, ...target, ...now, ...share, count].join(', ')}`;
}

function metricLines(metric: MetricProgress): readonly string[] {
  if (metric.series.length > 0) return metric.series.map((series) => seriesWords(metric, series));
  return [`${metric.name}: no readings yet`];
}

function dateWords({ by, daysLeft, closed }: GoalProgress): string {
  if (closed) return 'closed';
  if (by === undefined || daysLeft === undefined) return 'no date';
  return daysLeft < 0 ? `by ${by}, ${-daysLeft} days ago` : `by ${by}, ${daysLeft} days left`;
}

function goalLines(goal: GoalProgress): readonly string[] {
  const done = goal.steps.filter(({ state }) => state === 'done' || state === 'reached').length;
  const next = goal.nextSession;
  return [
    `${goal.id}: ${goal.title} (${dateWords(goal)})`,
    ...[
      ...goal.metrics.flatMap(metricLines),
      ...(goal.steps.length > 0 ? [`steps: ${done} of ${goal.steps.length}`] : []),
      `sessions done: ${goal.sessionsDone.length}`,
      ...(next
        ? [`next session: ${next.date}${next.span ? ` ${formatTimeSpan(next.span)}` : ''} ${next.kind}`]
        : []),
    ].map((line) => `  ${line}`),
  ];
}

/** The report for people: a few lines a goal. */
export function progressLines(read: JournalsToRead): string {
  const lines = progressReport(read).flatMap(({ journal, goals }) => [
    ...(read.journals.length > 1 ? [`${journal === '' ? '.' : journal}/`] : []),
    ...(goals.length > 0 ? goals.flatMap(goalLines) : ['no goals yet']),
  ]);
  return `${lines.map(terminalLine).join('\n')}\n`;
}
