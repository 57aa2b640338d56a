import type { Journal } from '../journal/journal';
import type { IsoDate } from '../notation/time/iso-date';
import type { Finding } from './finding';
import { inOrder } from './finding-order';
import { goalRules } from './goal-rules';

/**
 * What the goals of a journal lack on the day `today`. Only goals that are still ahead are looked at: not closed,
 * and not past their date. One that opens later is looked at as well, because it is being planned now.
 */
export function checkGoals(journal: Journal, { today }: { readonly today: IsoDate }): readonly Finding[] {
  const ahead = [...journal.plan.goals.values()].filter(
    (goal) => !goal.closed && (goal.by === undefined || goal.by >= today),
  );
  return inOrder(ahead.flatMap((goal) => goalRules.flatMap((rule) => rule.check(goal))));
}
