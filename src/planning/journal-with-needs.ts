import type { Goal, Journal, Need } from '../journal/journal';
import { journalAsIf } from '../journal/journal-as-if';

/**
 * The journal as if it asked for other needs: `change` is given the needs of each goal, and those of every week. What a
 * block says of its weeks does not count then. Notes, rules and hours stay as they are.
 */
export function journalWithNeeds(
  journal: Journal,
  change: (needs: readonly Need[]) => readonly Need[],
): Journal {
  const { plan } = journal;
  const goals = new Map<string, Goal>(
    [...plan.goals].map(([id, goal]) => [id, { ...goal, needs: change(goal.needs) }]),
  );
  const everyWeek = change(plan.needs.filter(({ goal }) => goal === undefined));
  const needs = [...[...goals.values()].flatMap((goal) => goal.needs), ...everyWeek];
  return journalAsIf(journal, { plan: { ...plan, goals, needs, blocks: [] } });
}
