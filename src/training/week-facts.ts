import type { BodyReport } from '../journal/journal';
import type { Rating, Side } from '../notation/entries';
import type { Unit } from '../notation/quantity';
import { type DayNumber, type IsoDate, isoDate } from '../notation/time/iso-date';
import type { IsoWeek } from '../notation/time/iso-week';
import { isoWeekOf, mondayOf } from '../notation/time/iso-week';
import { type AdherenceShare, adherenceShare } from './adherence/adherence-share';
import { type PlannedSession, plannedSessions } from './adherence/planned-sessions';
import { checkHistory } from './check-history';
import { checkWeekIn } from './check-week';
import type { Finding } from './finding';
import { type WeekLoadFigures, weekLoads } from './load/week-loads';
import type { DayReading } from './metric-progress';
import { figuresOfGoal, type GoalFigures } from './progress/goal-figures';
import type { MetricFigures, SeriesFigures } from './progress/metric-figures';
import { type ReadingChange, readingChange } from './progress/reading-change';
import type { Condition } from './progress/reading-series';
import type { StepFigures } from './progress/step-figures';
import { type ReorderSuggestion, reorderWeek, standsAlone } from './recovery/reorder-week';
import type { SessionFacts } from './session-facts';
import { isToDo } from './session-state';
import type { CheckContext } from './week-under-check';

/** Soreness or pain of a region within a week. */
export interface RegionReport {
  readonly region: string;
  readonly days: readonly IsoDate[];
  /** The highest rating, and the first day that had it; absent when none was rated. */
  readonly highest?: { readonly rating: Rating; readonly date: IsoDate };
}

/** The latest reading of a series in a week. */
export interface WeekReading {
  readonly goal: string;
  readonly metric: string;
  readonly unit?: Unit;
  readonly side?: Side;
  readonly condition: Condition;
  readonly day: DayReading;
  /** Since the latest day before the week; absent for a first reading. */
  readonly change?: ReadingChange;
}

/** What happened in a week, as far as it had come on the day that was asked for. */
export interface WeekFacts {
  readonly week: IsoWeek;
  readonly kept: AdherenceShare;
  readonly sessionsKept: readonly SessionFacts[];
  readonly minutesKept: number;
  /** Skipped, and those of which nothing says what became of them. */
  readonly notKept: readonly PlannedSession[];
  readonly moved: readonly SessionFacts[];
  readonly stillPlanned: readonly SessionFacts[];
  readonly soreness: readonly RegionReport[];
  readonly pain: readonly RegionReport[];
  readonly readings: readonly WeekReading[];
  readonly load?: WeekLoadFigures;
  /** Figures of the goals that are open, as of the end of the week. */
  readonly goals: readonly GoalFigures[];
  /** Steps that a reading of the week has reached, and those that were overdue at its end. */
  readonly steps: readonly { readonly goal: string; readonly step: StepFigures }[];
  readonly findings: readonly Finding[];
  /** What the whole journal shows; only for the week of today and the one before it. */
  readonly history: readonly Finding[];
  /** A better order of the week's sessions, when soreness asks for one. */
  readonly reorder?: ReorderSuggestion;
}

/** The reports of one sort by region, in order of region. */
function byRegion(reports: readonly BodyReport[]): readonly RegionReport[] {
  const groups = new Map<string, BodyReport[]>();
  for (const report of reports) groups.set(report.region, [...(groups.get(report.region) ?? []), report]);
  return [...groups]
    .sort(([one], [other]) => (one < other ? -1 : 1))
    .map(([region, own]) => {
      const rated = own.flatMap(({ rating, date }) => (rating === undefined ? [] : [{ rating, date }]));
      const [highest] = rated.sort((one, other) => other.rating - one.rating);
      return {
        region,
        days: [...new Set(own.map(({ date }) => date))],
        ...(highest ? { highest } : {}),
      };
    });
}

function readingIn(
  goal: string,
  metric: MetricFigures,
  series: SeriesFigures,
  monday: DayNumber,
): readonly WeekReading[] {
  const { days, noise, side, condition } = series;
  const day = days.at(-1);
  if (!day || day.day < monday) return [];
  const before = days.filter((one) => one.day < monday).at(-1);
  return [
    {
      goal,
      metric: metric.name,
      ...(metric.unit ? { unit: metric.unit } : {}),
      ...(side ? { side } : {}),
      condition,
      day,
      ...(before ? { change: readingChange(before, day, noise, metric.lowerIsBetter) } : {}),
    },
  ];
}

function stepsOf({ id, steps }: GoalFigures, first: IsoDate, last: IsoDate): WeekFacts['steps'] {
  return steps
    .filter(
      ({ state, reachedOn }) =>
        state === 'overdue' ||
        (state === 'reached' && reachedOn !== undefined && reachedOn >= first && reachedOn <= last),
    )
    .map((step) => ({ goal: id, step }));
}

/** What is past cannot be moved any more, but the next week like it can be. */
function reorderOf(context: CheckContext, sessions: readonly SessionFacts[], isOver: boolean) {
  const counted = sessions.filter(({ state }) => state !== 'moved');
  const isAhead = ({ state, session }: SessionFacts) => isToDo(state) && session.day >= context.todayNumber;
  const found = reorderWeek(context, counted, {
    mayMove: (facts) => standsAlone(facts) && (isOver || isAhead(facts)),
  });
  return found && found.sore.length > 0 ? found : undefined;
}

/** The facts of `week`: of the whole of it, or up to today while it runs. */
export function weekFacts(context: CheckContext, week: IsoWeek): WeekFacts {
  const { journal, plan, today, todayNumber, weeks } = context;
  const monday = mondayOf(week);
  const isOver = monday + 6 < todayNumber;
  const lastDay = Math.min(monday + 6, todayNumber);
  const end = isoDate(lastDay);
  const { sessions } = weeks(week);
  // Today's sessions are in it only once something says what became of them.
  const planned = plannedSessions(weeks, monday, monday + 6).filter(({ day }) => day <= lastDay);
  const reports = journal.bodyReports(monday, lastDay);
  const goals = [...plan.goals.values()]
    .filter(({ closed }) => !closed)
    .map((goal) => figuresOfGoal(journal, goal, { today: end, weeks }));
  const done = sessions.filter(({ state, session }) => state === 'done' && session.day <= lastDay);
  const [load] = weekLoads(journal, { today, first: week, last: week, weeks });
  const reorder = reorderOf(context, sessions, isOver);
  const current = isoWeekOf(today);
  const isRecent = mondayOf(current) - monday <= 7 && monday <= mondayOf(current);
  return {
    week,
    kept: adherenceShare(planned),
    sessionsKept: done,
    minutesKept: done.reduce((sum, { minutes }) => sum + (minutes ?? 0), 0),
    notKept: planned.filter(({ outcome }) => outcome !== 'done'),
    moved: sessions.filter(({ state }) => state === 'moved'),
    stillPlanned: sessions.filter(({ state }) => state === 'planned'),
    soreness: byRegion(reports.filter(({ kind }) => kind === 'sore')),
    pain: byRegion(reports.filter(({ kind, clear }) => kind === 'pain' && !clear)),
    readings: goals.flatMap((goal) =>
      goal.metrics.flatMap((metric) =>
        metric.series.flatMap((series) => readingIn(goal.id, metric, series, monday)),
      ),
    ),
    ...(load ? { load } : {}),
    goals,
    steps: goals.flatMap((goal) => stepsOf(goal, isoDate(monday), end)),
    findings: checkWeekIn(context, week),
    history: isRecent ? checkHistory(context) : [],
    ...(reorder ? { reorder } : {}),
  };
}
