import { type GoalRule, onGoal } from './goal-rule';

/**
 * An open goal has no `by:` date, so that no pace can be worked out for it.
 *
 * A journal that breaks it:
 *
 *     goals.md
 *     - #goal low-split
 *     - #why the duo act
 *     - #metric gap from:14cm to:0cm
 *
 * A journal that does not:
 *
 *     goals.md
 *     - #goal low-split by:2026-06-14
 *     - #why the duo act
 *     - #metric gap from:14cm to:0cm
 */
export const goalWithoutDate: GoalRule = {
  code: 'goal-without-date',
  check: (goal) =>
    goal.by !== undefined
      ? []
      : [
          onGoal(goal, {
            code: 'goal-without-date',
            remedies: ['add-date'],
            template: 'The goal {0} has no date; by: gives it one, and with it a pace',
          }),
        ],
};
