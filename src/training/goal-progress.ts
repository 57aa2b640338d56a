import type { Goal, Journal } from '../journal/journal';
import type { NotePath } from '../journal/note';
import type { Rating } from '../notation/entries';
import type { SourceRange } from '../notation/source-range';
import { daysBetween, type IsoDate } from '../notation/time/iso-date';
import type { IsoWeek } from '../notation/time/iso-week';
import type { TimeSpan } from '../notation/time/wall-clock';
import { sessionLoads } from './load/session-loads';
import { type MetricProgress, metricProgress } from './metric-progress';
import type { SessionFacts } from './session-facts';
import { sessionPlace } from './session-place';
import type { SessionState } from './session-state';
import { type LoadTotal, totalLoad } from './statistics/session-load';
import { type StepProgress, stepProgress } from './step-progress';
import { type WeekReader, weekReader } from './training-week';
import { totalMinutes } from './week-summary';
import { weeksOf } from './weeks-of-journal';

/** A session that counts for a goal. */
export interface GoalSession {
  readonly date: IsoDate;
  readonly span?: TimeSpan;
  readonly kind: string;
  readonly state: SessionState;
  readonly effort: Rating;
  readonly minutes?: number;
  readonly note: NotePath;
  readonly range: SourceRange;
}

/** The sessions of one week that count for a goal. */
export interface GoalWeek {
  readonly week: IsoWeek;
  readonly done: number;
  readonly minutesDone: number;
  /** Of the sessions done; `unknown` counts those without a rating or a length. */
  readonly load: LoadTotal;
  /** Done, planned and overdue. */
  readonly standing: number;
}

/** A goal and how far it has come: what its page, the tree and the command line show. */
export interface GoalProgress {
  readonly id: string;
  readonly title: string;
  readonly from?: IsoDate;
  readonly by?: IsoDate;
  readonly closed: boolean;
  /** Days from today to its date; negative when that has passed. */
  readonly daysLeft?: number;
  /** The words themselves are private and stay in the journal's plan. */
  readonly hasWhy: boolean;
  readonly metrics: readonly MetricProgress[];
  /** Readings that name no metric of the goal, or none where it has several. */
  readonly unplacedReadings: number;
  readonly steps: readonly StepProgress[];
  /** The weeks in which a session counts for the goal, in order. */
  readonly weeks: readonly GoalWeek[];
  /** Sessions done, in order of time. */
  readonly sessionsDone: readonly GoalSession[];
  readonly nextSession?: GoalSession;
  readonly note: NotePath;
  readonly range: SourceRange;
}

/** What {@link goalProgress} is worked out for. */
export interface GoalProgressOptions {
  readonly today: IsoDate;
  /** The reader that already read the journal, when several goals are asked for in one go. */
  readonly weeks?: WeekReader;
}

function goalSession(facts: SessionFacts): GoalSession {
  const { session } = facts;
  const span = session.entry.span?.value;
  return {
    date: session.date,
    ...(span ? { span } : {}),
    kind: session.kind,
    state: facts.state,
    effort: facts.effort,
    ...(facts.minutes === undefined ? {} : { minutes: facts.minutes }),
    ...sessionPlace(session),
  };
}

function goalWeek(week: IsoWeek, standing: readonly SessionFacts[]): GoalWeek {
  const done = standing.filter((facts) => facts.state === 'done');
  return {
    week,
    done: done.length,
    minutesDone: totalMinutes(done),
    load: totalLoad(sessionLoads(done).map(({ load }) => load)),
    standing: standing.length,
  };
}

function progressOf(journal: Journal, goal: Goal, options: GoalProgressOptions): GoalProgress {
  const { today } = options;
  const read = options.weeks ?? weekReader(journal, today);
  const weeks = weeksOf(journal, today)
    .map((week) => ({ week, standing: read(week).standing.filter((facts) => facts.goals.includes(goal.id)) }))
    .filter(({ standing }) => standing.length > 0);
  const sessions = weeks.flatMap(({ standing }) => standing);
  const metrics = goal.metrics.map((metric) =>
    metricProgress(metric, journal.measurements(goal.id, metric.name)),
  );
  const names = new Set(goal.metrics.map((metric) => metric.name));
  const unplaced = journal
    .measurements(goal.id)
    .filter(({ metric }) => metric === undefined || !names.has(metric));
  const next = sessions.find((facts) => facts.state === 'planned');
  return {
    id: goal.id,
    title: goal.title,
    ...(goal.from === undefined ? {} : { from: goal.from }),
    ...(goal.by === undefined ? {} : { by: goal.by, daysLeft: daysBetween(today, goal.by) }),
    closed: goal.closed,
    hasWhy: goal.whys.some((why) => why.words !== undefined),
    metrics,
    unplacedReadings: unplaced.length,
    steps: goal.steps.map((step) => stepProgress(step, goal, metrics, today)),
    weeks: weeks.map(({ week, standing }) => goalWeek(week, standing)),
    sessionsDone: sessions.filter((facts) => facts.state === 'done').map(goalSession),
    ...(next ? { nextSession: goalSession(next) } : {}),
    note: goal.note,
    range: goal.entry.range,
  };
}

/** How far the goal `id` has come, or `undefined` when the journal has no such goal. */
export function goalProgress(
  journal: Journal,
  id: string,
  options: GoalProgressOptions,
): GoalProgress | undefined {
  const goal = journal.plan.goals.get(id);
  return goal && progressOf(journal, goal, options);
}
