import * as vscode from 'vscode';
import type { Goal } from '../../journal/journal';
import { daysBetween, type IsoDate } from '../../notation/time/iso-date';
import { isoWeekOf } from '../../notation/time/iso-week';
import { formatTimeSpan } from '../../notation/time/wall-clock';
import { type MetricProgress, metricProgress } from '../../training/metric-progress';
import { nextSession } from '../../training/next-session';
import { figuresOfGoal } from '../../training/progress/goal-figures';
import { type ReadingSeries, readingSeries } from '../../training/progress/reading-series';
import { stepProgress } from '../../training/step-progress';
import { type WeekReader, weekReader } from '../../training/training-week';
import { editorWords } from '../editor-words';
import { countInWords } from '../goal-page/figure-sentences';
import { sideName } from '../goal-page/series-view';
import type { OpenJournal } from '../open-journal';
import { sayWithDays } from '../page/page-context';
import { daysFromNow, escaped, quantityWords } from './words';

/** `left 9.5 cm (24 February)` */
function latestOf(series: ReadingSeries, metric: MetricProgress, today: IsoDate): readonly string[] {
  const { side } = series;
  const latest = series.days.at(-1);
  if (!latest) return [];
  const words = editorWords();
  const value = quantityWords(words, latest.value, metric.unit);
  const date = words.dates.day(latest.date, today);
  if (side === 'left') return [vscode.l10n.t('left {0} ({1})', value, date)];
  if (side === 'right') return [vscode.l10n.t('right {0} ({1})', value, date)];
  return [vscode.l10n.t('{0} ({1})', value, date)];
}

function metricLine(metric: MetricProgress, today: IsoDate): string {
  const judged = readingSeries(metric).filter((series) => series.isMain);
  const latest = judged.flatMap((series) => latestOf(series, metric, today)).join(', ');
  const name = escaped(metric.name);
  const target =
    metric.target === undefined ? undefined : quantityWords(editorWords(), metric.target, metric.unit);
  if (latest === '') {
    return target === undefined
      ? vscode.l10n.t('{0}: no reading yet', name)
      : vscode.l10n.t('{0}: no reading yet; target {1}', name, target);
  }
  return target === undefined
    ? vscode.l10n.t('{0}: {1}', name, latest)
    : vscode.l10n.t('{0}: {1}; target {2}', name, latest, target);
}

function dateLine(goal: Goal, today: IsoDate): string {
  if (goal.closed) return vscode.l10n.t('Closed: reached or given up.');
  if (goal.by === undefined) return vscode.l10n.t('No date yet.');
  const date = editorWords().dates.weekdayAndDay(goal.by, today);
  return vscode.l10n.t('By {0}, {1}.', date, daysFromNow(daysBetween(today, goal.by)));
}

function weekLine(goal: Goal, weeks: WeekReader, today: IsoDate): string {
  const standing = weeks(isoWeekOf(today)).standing.filter((facts) => facts.goals.includes(goal.id));
  const done = standing.filter((facts) => facts.state === 'done').length;
  return standing.length === 0
    ? vscode.l10n.t('No session for it stands in this week.')
    : vscode.l10n.t('This week: {0} of {1} sessions done.', done, standing.length);
}

function stepsLine(goal: Goal, metrics: readonly MetricProgress[], today: IsoDate): readonly string[] {
  if (goal.steps.length === 0) return [];
  const states = goal.steps.map((step) => stepProgress(step, goal, metrics, today).state);
  const done = states.filter((state) => state === 'done' || state === 'reached').length;
  return [vscode.l10n.t('Steps: {0} of {1}.', done, states.length)];
}

function nextLine(journal: OpenJournal, goal: Goal, weeks: WeekReader, today: IsoDate): readonly string[] {
  const next = nextSession(journal.journal, goal.id, today, weeks)?.session;
  if (!next) return [];
  const date = editorWords().dates.weekdayAndDay(next.date, today);
  const kind = escaped(next.kind);
  const span = next.entry.span?.value;
  return span
    ? [vscode.l10n.t('Next: {0}, {1}, {2}.', kind, date, formatTimeSpan(span))]
    : [vscode.l10n.t('Next: {0}, {1}.', kind, date)];
}

/** Whether and when the target is reached, of the metric and side that stands worst. */
function verdictLine(journal: OpenJournal, goal: Goal, weeks: WeekReader, today: IsoDate): readonly string[] {
  if (goal.closed) return [];
  const { worst } = figuresOfGoal(journal.journal, goal, { today, weeks });
  if (!worst) return [];
  const context = { words: editorWords(), today };
  const about = [
    worst.metric.name,
    ...(worst.series.side === undefined ? [] : [sideName(worst.series.side, context)]),
  ].join(', ');
  const sentence = sayWithDays(context, worst.series.verdict.message);
  return [vscode.l10n.t('{0}: {1} ({2}).', escaped(about), sentence, countInWords(worst.series, context))];
}

/**
 * A goal in a few lines: title, date, latest readings, the verdict, steps, this week's sessions. The private reason is never shown.
 * `undefined` when the journal has no such goal.
 */
export function goalHover(journal: OpenJournal, id: string): readonly string[] | undefined {
  const goal = journal.journal.plan.goals.get(id);
  if (!goal) return undefined;
  const today = journal.today();
  const weeks = weekReader(journal.journal, today);
  const metrics = goal.metrics.map((metric) =>
    metricProgress(metric, journal.journal.measurements(goal.id, metric.name)),
  );
  const target = encodeURIComponent(JSON.stringify([{ journal: journal.id, goal: id }]));
  const lines = metrics.map((metric) => `- ${metricLine(metric, today)}`);
  return [
    `**${escaped(goal.title)}**`,
    dateLine(goal, today),
    ...(lines.length === 0 ? [] : [lines.join('\n')]),
    ...verdictLine(journal, goal, weeks, today),
    [
      ...stepsLine(goal, metrics, today),
      weekLine(goal, weeks, today),
      ...nextLine(journal, goal, weeks, today),
    ].join(' '),
    `[${vscode.l10n.t('Open the goal page')}](command:trainingJournal.openGoalPage?${target})`,
  ];
}
