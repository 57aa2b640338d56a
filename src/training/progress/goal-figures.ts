import type { Goal, Journal } from '../../journal/journal';
import { type DayNumber, dayNumber, type IsoDate } from '../../notation/time/iso-date';
import { addWeeks, isoWeekOf } from '../../notation/time/iso-week';
import { metricProgress } from '../metric-progress';
import { stepProgress } from '../step-progress';
import { type WeekReader, weekReader } from '../training-week';
import { type MetricFigures, metricFigures, type SeriesFigures } from './metric-figures';
import { verdictOrder } from './metric-verdict';
import { PLATEAU_WEEKS } from './plateau';
import { type StepFigures, stepFigures } from './step-figures';

/** A goal's figures: each metric's, the steps, and the series that asks for most attention. */
export interface GoalFigures {
  readonly id: string;
  readonly title: string;
  readonly by?: IsoDate;
  readonly closed: boolean;
  readonly metrics: readonly MetricFigures[];
  readonly steps: readonly StepFigures[];
  /** Of the series that the goal is judged by, the one that stands worst; its `verdict` is the goal's sentence. */
  readonly worst?: { readonly metric: MetricFigures; readonly series: SeriesFigures };
}

/** What {@link goalFigures} is worked out for. */
export interface GoalFiguresOptions {
  readonly today: IsoDate;
  /** The reader that already read the journal, when several goals are asked for in one go. */
  readonly weeks?: WeekReader;
}

/** Days of the sessions done for a goal in the weeks that a plateau is looked for in. */
export function recentSessionDays(weeks: WeekReader, goal: string, today: IsoDate): readonly DayNumber[] {
  const current = isoWeekOf(today);
  const last = dayNumber(today);
  return Array.from({ length: PLATEAU_WEEKS + 1 }, (_, ago) => weeks(addWeeks(current, ago - PLATEAU_WEEKS)))
    .flatMap(({ standing }) => standing)
    .filter((facts) => facts.state === 'done' && facts.goals.includes(goal) && facts.session.day <= last)
    .map((facts) => facts.session.day);
}

/** Of the series in their main state, the one whose verdict asks for most attention; the first of equals. */
function worstOf(metrics: readonly MetricFigures[]): GoalFigures['worst'] {
  const judged = metrics.flatMap((metric) =>
    metric.series
      .filter(({ isMain, verdict }) => isMain && verdict.code !== 'no-target')
      .map((series) => ({ metric, series })),
  );
  const rank = ({ series }: { readonly series: SeriesFigures }) => verdictOrder.indexOf(series.verdict.code);
  return judged.sort((one, other) => rank(one) - rank(other))[0];
}

/** The figures of a goal that is already in hand. */
export function figuresOfGoal(journal: Journal, goal: Goal, options: GoalFiguresOptions): GoalFigures {
  const { today } = options;
  const weeks = options.weeks ?? weekReader(journal, today);
  const progress = goal.metrics.map((metric) =>
    metricProgress(metric, journal.measurements(goal.id, metric.name)),
  );
  const sessionDays = recentSessionDays(weeks, goal.id, today);
  const metrics = progress.map((metric) => metricFigures(metric, { today, by: goal.by, sessionDays }));
  const worst = worstOf(metrics);
  return {
    id: goal.id,
    title: goal.title,
    ...(goal.by === undefined ? {} : { by: goal.by }),
    closed: goal.closed,
    metrics,
    steps: goal.steps.map((step) => stepFigures(stepProgress(step, goal, progress, today), today)),
    ...(worst ? { worst } : {}),
  };
}

/** The figures of the goal `id`, or `undefined` when the journal has no such goal. */
export function goalFigures(
  journal: Journal,
  id: string,
  options: GoalFiguresOptions,
): GoalFigures | undefined {
  const goal = journal.plan.goals.get(id);
  return goal && figuresOfGoal(journal, goal, options);
}
