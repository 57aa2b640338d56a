import { reviewDue } from '../../planning/week-review/review-due';
import { type DueSessions, dueSessions } from '../../training/due-sessions';
import { isToDo } from '../../training/session-state';
import { checkContext } from '../../training/week-under-check';
import { sessionNodes } from './session-node';
import { byJournal, inLines, inOneLine, type JournalRows, say, type ViewContext } from './view-context';
import type { ViewNode } from './view-node';

/** `1 session`, `3 sessions`. */
function sessionCount(count: number, context: ViewContext): string {
  return count === 1 ? say(context, '1 session') : say(context, '{0} sessions', count);
}

function overdueGroup(due: DueSessions, context: ViewContext): ViewNode {
  return {
    id: `${context.id}#overdue`,
    kind: 'group',
    journal: context.id,
    label: say(context, 'Overdue'),
    description: sessionCount(due.overdue.length, context),
    tooltip: say(context, 'Tick what you did, move what you still want to do, skip the rest with a reason.'),
    children: sessionNodes(due.overdue, context, () => ({ within: 'overdue' })),
  };
}

function todayGroup(due: DueSessions, context: ViewContext): ViewNode {
  const toDo = due.today.filter((facts) => isToDo(facts.state)).length;
  return {
    id: `${context.id}#today`,
    kind: 'group',
    journal: context.id,
    label: say(context, 'Today'),
    description: inOneLine(
      context.words.dates.weekdayAndDay(context.today, context.today),
      toDo === 0 ? undefined : say(context, '{0} to do', toDo),
    ),
    children: sessionNodes(due.today, context, () => ({ within: 'today' })),
  };
}

function laterGroup(due: DueSessions, context: ViewContext): ViewNode {
  return {
    id: `${context.id}#later`,
    kind: 'group',
    journal: context.id,
    label: say(context, 'This week'),
    description: sessionCount(due.laterThisWeek.length, context),
    children: sessionNodes(due.laterThisWeek, context, (facts) => ({
      within: 'later',
      before: context.words.dates.weekday(facts.session.date),
    })),
  };
}

/** The reminder to look back on a week, while it is time and nobody has. */
function reviewRow(context: ViewContext): readonly ViewNode[] {
  const { journal, today, zone, reviewDay } = context;
  const due = reviewDue(checkContext(journal, { today, zone }), reviewDay);
  if (!due) return [];
  const early = due.earlyInBlock;
  return [
    {
      id: `${context.id}#review`,
      kind: 'review',
      journal: context.id,
      label: say(context, 'Look back on week {0}', due.week),
      ...(early === undefined ? {} : { description: say(context, 'week {0} of the block', early) }),
      tooltip: inLines(
        early === undefined
          ? undefined
          : say(
              context,
              'Many slow down in weeks 3, 4, 7 and 8 of a block, so the look back comes earlier: the rest of the week can still be made easier to keep.',
            ),
        say(context, 'Shows what happened, offers what could be changed, and plans the next week.'),
        say(context, 'Nothing is written before you say so.'),
      ),
      icon: 'notebook',
      children: [],
    },
  ];
}

function summary(due: DueSessions, context: ViewContext): string {
  const toDo = due.today.filter((facts) => isToDo(facts.state)).length;
  const words = inOneLine(
    due.overdue.length === 0 ? undefined : say(context, '{0} overdue', due.overdue.length),
    toDo === 0 ? undefined : say(context, '{0} today', toDo),
    due.laterThisWeek.length === 0
      ? undefined
      : say(context, '{0} later this week', due.laterThisWeek.length),
  );
  return words === '' ? say(context, 'nothing due') : words;
}

function rowsOf(context: ViewContext): JournalRows {
  const due = dueSessions(context.journal, context.today, context.weeks);
  return {
    rows: [
      ...[overdueGroup(due, context), todayGroup(due, context), laterGroup(due, context)].filter(
        (group) => group.children.length > 0,
      ),
      ...reviewRow(context),
    ],
    summary: summary(due, context),
  };
}

/**
 * What is due: overdue sessions, today's, those later this week, and a week to look back on; groups without any are
 * left out.
 */
export function dueNodes(contexts: readonly ViewContext[]): readonly ViewNode[] {
  return byJournal(contexts, rowsOf, false);
}
