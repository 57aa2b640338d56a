import { isoDate } from '../../notation/time/iso-date';
import { mondayOf } from '../../notation/time/iso-week';
import { formatTimeSpan } from '../../notation/time/wall-clock';
import type { GoalView, TableView } from '../../pages/goal-page-data';
import type { GoalProgress } from '../../training/goal-progress';
import type { GoalFigures } from '../../training/progress/goal-figures';
import { minutesInWords } from '../../training/wording';
import { loadInWords } from '../page/load-words';
import { dayInWords, type PageContext, pagePlace, say } from '../page/page-context';
import { metricView } from './metric-view';
import { stepViews } from './step-view';

function dateSentence(goal: GoalProgress, context: PageContext): string {
  if (goal.closed) return say(context, 'This goal is closed: reached or given up.');
  if (goal.by === undefined || goal.daysLeft === undefined) return say(context, 'It has no date yet.');
  const date = dayInWords(context, goal.by);
  const days = goal.daysLeft;
  if (days === 0) return say(context, 'Its date is today, {0}.', date);
  if (days === 1) return say(context, 'By {0}: 1 day is left.', date);
  if (days > 1) return say(context, 'By {0}: {1} days are left.', date, days);
  return days === -1
    ? say(context, 'Its date was yesterday, {0}.', date)
    : say(context, 'Its date was {0}, {1} days ago.', date, -days);
}

function sessionSentence(goal: GoalProgress, context: PageContext): string {
  const done = goal.sessionsDone.length;
  const next = goal.nextSession;
  const sofar =
    done === 1
      ? say(context, '1 session is done.')
      : done === 0
        ? say(context, 'No session is done yet.')
        : say(context, '{0} sessions are done.', done);
  if (!next) return say(context, '{0} None is planned.', sofar);
  const date = dayInWords(context, next.date);
  return next.span
    ? say(context, '{0} Next: {1}, {2}, {3}.', sofar, next.kind, date, formatTimeSpan(next.span))
    : say(context, '{0} Next: {1}, {2}.', sofar, next.kind, date);
}

function notices(goal: GoalProgress, context: PageContext): readonly string[] {
  return [
    ...(goal.metrics.length === 0
      ? [
          say(
            context,
            'Nothing to measure yet. Write below the goal what is measured, where you are and where you want to be: {0}',
            '#metric gap from:14cm to:0cm',
          ),
        ]
      : []),
    ...(goal.unplacedReadings > 0
      ? [say(context, 'Readings that name no metric of this goal: {0}.', goal.unplacedReadings)]
      : []),
  ];
}

/** Weeks in which a session stands, the newest first. */
function sessionsTable(goal: GoalProgress, context: PageContext): TableView | undefined {
  if (goal.weeks.length === 0) return undefined;
  return {
    caption: say(context, 'Sessions by week ({0})', goal.weeks.length),
    head: [
      say(context, 'Week of'),
      say(context, 'Done'),
      say(context, 'In the week'),
      say(context, 'Time done'),
      say(context, 'Load'),
    ],
    rows: [...goal.weeks].reverse().map((week) => ({
      cells: [
        context.words.dates.day(isoDate(mondayOf(week.week)), context.today),
        context.words.number(week.done, 0),
        context.words.number(week.standing, 0),
        minutesInWords(week.minutesDone),
        loadInWords(week.load, context),
      ],
    })),
  };
}

/** A goal as the page shows it. The private reason is not in it. */
export function goalView(goal: GoalProgress, figures: GoalFigures, context: PageContext): GoalView {
  const sessions = sessionsTable(goal, context);
  return {
    id: goal.id,
    title: goal.title,
    sentences: [dateSentence(goal, context), sessionSentence(goal, context)],
    notices: notices(goal, context),
    hasWhy: goal.hasWhy,
    metrics: goal.metrics.flatMap((metric, index) => {
      // The figures are those of the same metrics, in the same order.
      const own = figures.metrics[index];
      return own ? [metricView(goal, metric, own, context)] : [];
    }),
    steps: stepViews(goal, context),
    ...(sessions ? { sessions } : {}),
    place: pagePlace(goal),
  };
}
