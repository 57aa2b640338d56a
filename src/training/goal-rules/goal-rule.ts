import type { Goal } from '../../journal/journal';
import type { Finding, FindingCode } from '../finding';
import { entryPlace } from '../session-place';
import { message } from '../wording';

/** A check of one open goal. */
export interface GoalRule {
  readonly code: FindingCode;
  readonly check: (goal: Goal) => readonly Finding[];
}

/** A finding that stands on the goal's own tag. */
export function onGoal(
  goal: Goal,
  what: Pick<Finding, 'code' | 'remedies'> & { readonly template: string },
): Finding {
  return {
    code: what.code,
    severity: 'information',
    ...entryPlace(goal),
    message: message(what.template, goal.id),
    facts: { goal: goal.id },
    related: [],
    remedies: what.remedies,
  };
}
