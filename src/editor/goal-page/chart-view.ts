import { type DayNumber, dayNumber, isoDate } from '../../notation/time/iso-date';
import { mondayOf } from '../../notation/time/iso-week';
import type { ChartView, SeriesView, StepMark, WeekBar } from '../../pages/goal-page-data';
import type { GoalProgress, GoalWeek } from '../../training/goal-progress';
import type { MetricProgress } from '../../training/metric-progress';
import type { ReadingSeries } from '../../training/progress/reading-series';
import { loadInWords } from '../page/load-words';
import {
  dayInWords,
  type PageContext,
  pagePlace,
  quantityInWords,
  say,
  unitSuffix,
} from '../page/page-context';
import { stepInWords } from './step-view';

/** Words of a week's sessions: `Week of 23 February: 2 of 3 sessions done`. */
export function weekInWords(week: GoalWeek, context: PageContext): string {
  const monday = context.words.dates.day(isoDate(mondayOf(week.week)), context.today);
  return say(context, 'Week of {0}: {1} of {2} sessions done', monday, week.done, week.standing);
}

/** `Week of 23 February: load 480`, or that it is at least so much. */
function loadOfWeek(week: GoalWeek, context: PageContext): string {
  const monday = context.words.dates.day(isoDate(mondayOf(week.week)), context.today);
  return say(context, 'Week of {0}: load {1}', monday, loadInWords(week.load, context));
}

function weekBars(goal: GoalProgress, context: PageContext): readonly WeekBar[] {
  return goal.weeks
    .filter((week) => week.done > 0)
    .map((week) => ({
      monday: mondayOf(week.week),
      done: week.done,
      text: weekInWords(week, context),
      load: week.load.knownTotal,
      loadIsLeast: week.load.unknown > 0,
      loadText: loadOfWeek(week, context),
    }));
}

/** Steps of this metric that have a date and a value. */
function stepMarks(goal: GoalProgress, metric: MetricProgress, context: PageContext): readonly StepMark[] {
  return goal.steps.flatMap((step) => {
    if (step.metric !== metric.name || step.by === undefined || step.to === undefined) return [];
    return [
      {
        day: dayNumber(step.by),
        value: step.to,
        isDone: step.state === 'done' || step.state === 'reached',
        text: say(context, '{0}: {1}', step.id, stepInWords(step, metric.unit, context)),
        place: pagePlace(step),
      },
    ];
  });
}

/** A little room at both ends, so that nothing stands on the edge. */
function shownDays(days: readonly DayNumber[]): { readonly first: DayNumber; readonly last: DayNumber } {
  const first = Math.min(...days);
  const last = Math.max(...days);
  const room = Math.max(2, Math.round((last - first) * 0.02));
  return { first: first - room, last: last + room };
}

/** What a screen reader says instead of the picture. */
function label(
  goal: GoalProgress,
  metric: MetricProgress,
  main: readonly ReadingSeries[],
  context: PageContext,
): string {
  const days = main.reduce((total, series) => total + series.days.length, 0);
  const about = main.flatMap(({ side, days: measured }) => {
    const first = measured[0];
    const latest = measured.at(-1);
    if (!first || !latest) return [];
    const from = quantityInWords(context, first.value, metric.unit);
    const to = quantityInWords(context, latest.value, metric.unit);
    const values = [from, dayInWords(context, first.date), to, dayInWords(context, latest.date)] as const;
    if (side === 'left') return [say(context, 'left from {0} on {1} to {2} on {3}', ...values)];
    if (side === 'right') return [say(context, 'right from {0} on {1} to {2} on {3}', ...values)];
    return [say(context, 'from {0} on {1} to {2} on {3}', ...values)];
  });
  const target =
    metric.target === undefined
      ? ''
      : say(context, ', target {0}', quantityInWords(context, metric.target, metric.unit));
  return say(
    context,
    'Chart of {0} for {1}: points: {2}, {3}{4}. The same figures stand in the tables below.',
    metric.name,
    goal.title,
    days,
    about.join('; '),
    target,
  );
}

/**
 * What the chart of a metric draws.
 * @param main The series that the metric is judged by.
 * @param series All that can be shown, in whatever state.
 */
export function chartView(
  goal: GoalProgress,
  metric: MetricProgress,
  main: readonly ReadingSeries[],
  series: readonly SeriesView[],
  context: PageContext,
): ChartView {
  const steps = stepMarks(goal, metric, context);
  const weeks = weekBars(goal, context);
  const today = dayNumber(context.today);
  const by = goal.by === undefined ? undefined : dayNumber(goal.by);
  const { target } = metric;
  return {
    label: label(goal, metric, main, context),
    ...shownDays([
      today,
      ...(by === undefined ? [] : [by]),
      ...(goal.from === undefined ? [] : [dayNumber(goal.from)]),
      ...series.flatMap((one) => one.days.map(({ day }) => day)),
      ...series.flatMap(({ trend }) => (trend?.fan ?? []).map(({ day }) => day)),
      ...steps.map(({ day }) => day),
      ...weeks.flatMap(({ monday }) => [monday, monday + 6]),
    ]),
    unit: unitSuffix(metric.unit),
    series,
    steps,
    ...(target === undefined
      ? {}
      : {
          target: {
            at: target,
            label: say(context, 'target {0}', quantityInWords(context, target, metric.unit)),
          },
        }),
    ...(by === undefined || goal.by === undefined
      ? {}
      : { goalDate: { at: by, label: context.words.dates.day(goal.by, context.today) } }),
    today: { at: today, label: say(context, 'today') },
    weeks,
  };
}
