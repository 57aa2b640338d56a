import type { Goal } from '../../journal/journal';
import { daysBetween } from '../../notation/time/iso-date';
import { isoWeekOf } from '../../notation/time/iso-week';
import { nextSession } from '../../training/next-session';
import { nearestFirst } from '../../training/open-needs';
import { entryPlace } from '../../training/session-place';
import { weekVolume } from '../../training/week-volume';
import { metricNode } from './metric-node';
import { needNode } from './need-node';
import { sessionNode } from './session-node';
import { sessionLabel } from './session-words';
import { stepNode } from './step-node';
import {
  byJournal,
  inLines,
  inOneLine,
  type JournalRows,
  say,
  type ViewContext,
  viewPlace,
} from './view-context';
import type { ViewNode } from './view-node';

type GoalState = 'open' | 'past' | 'coming' | 'closed';

/** One shape a state. */
const icons: Readonly<Record<GoalState, string>> = {
  open: 'target',
  past: 'history',
  coming: 'clock',
  closed: 'pass',
};

function stateOf(goal: Goal, context: ViewContext): GoalState {
  if (goal.closed) return 'closed';
  if (goal.by !== undefined && goal.by < context.today) return 'past';
  return goal.from !== undefined && goal.from > context.today ? 'coming' : 'open';
}

function daysLeft(goal: Goal, context: ViewContext): string {
  if (goal.by === undefined) return say(context, 'no date');
  const days = daysBetween(context.today, goal.by);
  if (days === 0) return say(context, 'its date is today');
  return days === 1 ? say(context, '1 day left') : say(context, '{0} days left', days);
}

function stateInWords(goal: Goal, context: ViewContext): string {
  const { dates } = context.words;
  switch (stateOf(goal, context)) {
    case 'closed':
      return say(context, 'closed');
    case 'past':
      return goal.by === undefined
        ? say(context, 'past its date')
        : say(context, 'past its date, {0}', dates.day(goal.by, context.today));
    case 'coming':
      return goal.from === undefined
        ? daysLeft(goal, context)
        : say(context, 'begins on {0}', dates.day(goal.from, context.today));
    case 'open':
      return daysLeft(goal, context);
  }
}

function goalLines(goal: Goal, context: ViewContext): string {
  const { dates } = context.words;
  return inLines(
    goal.title,
    goal.id === goal.title ? undefined : goal.id,
    goal.by === undefined ? undefined : say(context, 'by {0}', dates.weekdayAndDay(goal.by, context.today)),
    stateInWords(goal, context),
  );
}

function nextSessionNode(goal: Goal, context: ViewContext): ViewNode {
  const next = nextSession(context.journal, goal.id, context.today, context.weeks);
  if (!next) {
    const label = say(context, 'Next session');
    const description = say(context, 'none is planned');
    return {
      id: `${context.id}#${goal.id}/next`,
      kind: 'text',
      journal: context.id,
      label,
      description,
      icon: 'calendar',
      accessibilityLabel: inOneLine(label, description),
      children: [],
    };
  }
  const { date } = next.session;
  return sessionNode(next, context, {
    within: `${goal.id}/next`,
    label: say(context, 'Next: {0}', sessionLabel(next.session)),
    icon: 'calendar',
    before: date === context.today ? say(context, 'today') : context.words.dates.near(date, context.today),
  });
}

function needNodes(goal: Goal, context: ViewContext): readonly ViewNode[] {
  const week = isoWeekOf(context.today);
  return weekVolume(context.journal, week, context.today, context.weeks)
    .filter((volume) => volume.need.goal === goal.id)
    .map((volume, ordinal) =>
      needNode(volume, context, {
        within: goal.id,
        ordinal,
        label: say(context, '{0} this week', volume.need.kind),
        isOver: false,
      }),
    );
}

function goalNode(goal: Goal, isFirst: boolean, context: ViewContext): ViewNode {
  const metrics = goal.metrics.map((metric, ordinal) => metricNode(goal, metric, ordinal, context));
  const progress = metrics.map((metric) => metric.progress);
  const state = stateOf(goal, context);
  const description = stateInWords(goal, context);
  return {
    id: `${context.id}#${goal.id}`,
    kind: 'goal',
    journal: context.id,
    label: goal.title,
    description,
    tooltip: goalLines(goal, context),
    icon: icons[state],
    accessibilityLabel: say(context, 'goal {0}', inOneLine(goal.title, description)),
    place: viewPlace(context, entryPlace(goal)),
    goal: goal.id,
    collapsed: !isFirst,
    children: [
      ...metrics.map((metric) => metric.node),
      ...goal.steps.flatMap((_, ordinal) => stepNode(goal, ordinal, progress, context) ?? []),
      ...(state === 'closed' ? [] : [nextSessionNode(goal, context)]),
      ...needNodes(goal, context),
    ],
  };
}

function rowsOf(context: ViewContext): JournalRows {
  const goals = nearestFirst(context.journal.plan.goals.values());
  const open = goals.filter((goal) => !goal.closed);
  const closed = goals.filter((goal) => goal.closed);
  return {
    rows: [...open, ...closed].map((goal, index) => goalNode(goal, index === 0, context)),
    summary: open.length === 1 ? say(context, '1 goal') : say(context, '{0} goals', open.length),
  };
}

/**
 * Goals, the nearest first and closed ones last, each with its metrics, steps, next session, and what the week gives
 * to its needs. Private reasons are never shown here.
 */
export function goalNodes(contexts: readonly ViewContext[]): readonly ViewNode[] {
  return byJournal(contexts, rowsOf, true);
}
