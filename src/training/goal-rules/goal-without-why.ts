import { type GoalRule, onGoal } from './goal-rule';

/**
 * An open goal has no `#why` with words in it, to be read when the motivation is gone.
 *
 * A journal that breaks it:
 *
 *     goals.md
 *     - #goal low-split by:2026-06-14
 *     - #metric gap from:14cm to:0cm
 *
 * A journal that does not:
 *
 *     goals.md
 *     - #goal low-split by:2026-06-14
 *     - #why the duo act
 *     - #metric gap from:14cm to:0cm
 */
export const goalWithoutWhy: GoalRule = {
  code: 'goal-without-why',
  check: (goal) =>
    goal.whys.some((why) => why.words !== undefined)
      ? []
      : [
          onGoal(goal, {
            code: 'goal-without-why',
            remedies: ['add-why'],
            template: 'The goal {0} does not say why it matters; #why keeps that for you, in private',
          }),
        ],
};
