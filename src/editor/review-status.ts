import { type ReviewDue, reviewDue } from '../planning/week-review/review-due';
import { checkContext } from '../training/week-under-check';
import { inLines, say, type ViewContext } from './views/view-context';

/** What the status bar says of weeks that nobody has looked back on yet. */
export interface ReviewStatus {
  readonly text: string;
  readonly tooltip: string;
  readonly accessibilityLabel: string;
  /** Address of the journal, when it is about only one. */
  readonly journal?: string;
}

interface DueJournal {
  readonly context: ViewContext;
  readonly due: ReviewDue;
}

function labelOf(context: ViewContext, all: readonly DueJournal[], { due }: DueJournal): string {
  return all.length === 1
    ? say(context, 'Look back on week {0}', due.week)
    : say(context, 'Look back on {0} journals', all.length);
}

/**
 * The reminder to look back, of one journal or of several together.
 * @returns nothing on days without one
 */
export function reviewStatus(contexts: readonly ViewContext[]): ReviewStatus | undefined {
  const all = contexts.flatMap((context): readonly DueJournal[] => {
    const { journal, today, zone, reviewDay } = context;
    const due = reviewDue(checkContext(journal, { today, zone }), reviewDay);
    return due ? [{ context, due }] : [];
  });
  const [first] = all;
  if (!first) return undefined;
  const { context } = first;
  const label = labelOf(context, all, first);
  return {
    text: `$(notebook) ${label}`,
    tooltip: inLines(
      ...(all.length === 1 ? [] : all.map(({ context: { title }, due }) => `${title}: ${due.week}`)),
      say(context, 'Shows what happened, offers what could be changed, and plans the next week.'),
      say(context, 'Nothing is written before you say so.'),
    ),
    accessibilityLabel: say(context, 'Training: {0}', label),
    ...(all.length === 1 ? { journal: context.id } : {}),
  };
}
