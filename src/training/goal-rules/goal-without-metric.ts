import { type GoalRule, onGoal } from './goal-rule';

/**
 * An open goal has no `#metric`, so that nothing can show whether it comes nearer.
 *
 * A journal that breaks it:
 *
 *     goals.md
 *     - #goal low-split by:2026-06-14
 *     - #why the duo act
 *
 * A journal that does not:
 *
 *     goals.md
 *     - #goal low-split by:2026-06-14
 *     - #why the duo act
 *     - #metric gap from:14cm to:0cm
 */
export const goalWithoutMetric: GoalRule = {
  code: 'goal-without-metric',
  check: (goal) =>
    goal.metrics.length > 0
      ? []
      : [
          onGoal(goal, {
            code: 'goal-without-metric',
            remedies: ['add-metric'],
            template: 'The goal {0} has nothing to measure it by; a goal asks for at least one #metric',
          }),
        ],
};
