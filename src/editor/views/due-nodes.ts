import { type DueSessions, dueSessions } from '../../training/due-sessions';
import { isToDo } from '../../training/session-state';
import { sessionNodes } from './session-node';
import { byJournal, inOneLine, type JournalRows, say, type ViewContext } from './view-context';
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
    rows: [overdueGroup(due, context), todayGroup(due, context), laterGroup(due, context)].filter(
      (group) => group.children.length > 0,
    ),
    summary: summary(due, context),
  };
}

/** What is due: overdue sessions, today's, and those later this week; groups without any are left out. */
export function dueNodes(contexts: readonly ViewContext[]): readonly ViewNode[] {
  return byJournal(contexts, rowsOf, false);
}
