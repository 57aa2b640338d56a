import type { NotePath } from '../journal/note';
import type { IsoDate } from '../notation/time/iso-date';
import { formatTimeSpan } from '../notation/time/wall-clock';
import { type GoalProgress, goalProgress } from '../training/goal-progress';
import type { MetricProgress, MetricSeries } from '../training/metric-progress';
import { figuresOfGoal, type GoalFigures } from '../training/progress/goal-figures';
import { weekReader } from '../training/training-week';
import { figuresLines, figuresValue } from './figures-report';
import { journalsJson } from './printed-words';
import type { JournalsToRead, JournalToRead } from './read-journals';
import { terminalLine } from './terminal-text';

/** The goals of one journal as `progress` prints them. */
export interface JournalProgress {
  /** The journal's folder; empty for the folder that was given. */
  readonly journal: NotePath;
  readonly today: IsoDate;
  readonly goals: readonly GoalReport[];
}

/** A goal's progress with its figures. */
export interface GoalReport extends GoalProgress {
  readonly figures: GoalFigures;
}

function progressOf({ journal, today }: JournalToRead): JournalProgress {
  const weeks = weekReader(journal, today);
  const goals = [...journal.plan.goals.values()].flatMap((goal) => {
    const progress = goalProgress(journal, goal.id, { today, weeks });
    return progress ? [{ ...progress, figures: figuresOfGoal(journal, goal, { today, weeks }) }] : [];
  });
  return { journal: journal.root, today, goals };
}

/** How far every goal of every journal has come. */
export function progressReport({ journals }: JournalsToRead): readonly JournalProgress[] {
  return journals.map(progressOf);
}

function goalValue({ figures, ...goal }: GoalReport) {
  return { ...goal, figures: figuresValue(figures) };
}

/** The report as JSON: `{ today, journals: [{ journal, today, goals }] }`. The private reasons are not in it. */
export function progressJson(read: JournalsToRead): string {
  return journalsJson(read, (one) => ({ goals: progressOf(one).goals.map(goalValue) }));
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

function goalLines(goal: GoalReport): readonly string[] {
  const done = goal.steps.filter(({ state }) => state === 'done' || state === 'reached').length;
  const next = goal.nextSession;
  return [
    `${goal.id}: ${goal.title} (${dateWords(goal)})`,
    ...[
      ...goal.metrics.flatMap(metricLines),
      ...figuresLines(goal.figures),
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
