import { isoWeekOf } from '../notation/time/iso-week';
import { dueSessions } from '../training/due-sessions';
import { summariseWeek, type WeekSummary } from '../training/week-summary';
import { sessionLabel, stateInWords } from './views/session-words';
import { inLines, inOneLine, say, type ViewContext } from './views/view-context';

/** What the status bar says of this week. */
export interface WeekStatus {
  readonly text: string;
  readonly tooltip: string;
  readonly accessibilityLabel: string;
}

function summaryOf(context: ViewContext): WeekSummary {
  return summariseWeek(context.journal, isoWeekOf(context.today), context.today, context.weeks);
}

function sessionsLine(summary: WeekSummary, context: ViewContext): string {
  if (summary.planned === 0) return say(context, 'no sessions in week {0}', summary.week);
  return say(context, '{0} of {1} sessions done in week {2}', summary.done, summary.planned, summary.week);
}

function minutesLine(summary: WeekSummary, context: ViewContext): string | undefined {
  if (summary.minutesPlanned === 0) return undefined;
  const { number } = context.words;
  return say(context, '{0} of {1} min', number(summary.minutesDone, 0), number(summary.minutesPlanned, 0));
}

function dueLines(context: ViewContext): string {
  const due = dueSessions(context.journal, context.today, context.weeks);
  const today = due.today.map((facts) =>
    say(context, '{0} ({1})', sessionLabel(facts.session), stateInWords(facts, context)),
  );
  return inLines(
    today.length === 0 ? say(context, 'Today: no session') : say(context, 'Today: {0}', today.join(', ')),
    due.overdue.length === 0 ? undefined : say(context, 'Overdue: {0}', due.overdue.length),
  );
}

/**
 * This week's done of planned, of one journal or of several together.
 * @returns nothing without a journal
 */
export function weekStatus(contexts: readonly ViewContext[]): WeekStatus | undefined {
  const [first] = contexts;
  if (!first) return undefined;
  const summaries = contexts.map((context) => ({ context, summary: summaryOf(context) }));
  const done = summaries.reduce((total, { summary }) => total + summary.done, 0);
  const planned = summaries.reduce((total, { summary }) => total + summary.planned, 0);
  const count =
    planned === 0 ? say(first, 'no sessions this week') : say(first, '{0} of {1} this week', done, planned);
  return {
    text: `$(check) ${count}`,
    tooltip: inLines(
      ...summaries.map(({ context, summary }) =>
        inLines(
          inOneLine(`${context.title}: ${sessionsLine(summary, context)}`, minutesLine(summary, context)),
          contexts.length === 1 ? dueLines(context) : undefined,
        ),
      ),
    ),
    accessibilityLabel:
      planned === 0
        ? say(first, 'Training: no sessions this week')
        : say(first, 'Training: {0} of {1} sessions done this week', done, planned),
  };
}
