import { entryPlace, related } from '../session-place';
import { message } from '../wording';
import type { NoteRule } from './note-rule';

/**
 * A `#goal` has the name of an earlier one, so that what names it is counted for the earlier one only.
 *
 * A journal that breaks it:
 *
 *     goals.md
 *     - #goal low-split by:2026-06-14
 *     summer.md
 *     - #goal low-split by:2026-08-30
 *
 * A journal that does not:
 *
 *     goals.md
 *     - #goal low-split by:2026-06-14
 *     summer.md
 *     - #goal block-split by:2026-08-30
 */
export const duplicateGoal: NoteRule = {
  code: 'duplicate-goal',
  check: (note, { plan }) =>
    plan.duplicateGoals
      .filter((goal) => goal.note === note.path)
      .map((goal) => {
        const first = plan.goals.get(goal.id);
        return {
          code: 'duplicate-goal',
          severity: 'warning',
          note: note.path,
          range: goal.entry.id?.range ?? entryPlace(goal).range,
          message: message(
            '{1} has a goal {0} already; this one is not counted',
            goal.id,
            first?.note ?? note.path,
          ),
          facts: { goal: goal.id, first: first?.note ?? note.path },
          related: first ? [related(entryPlace(first), message('The goal that counts'))] : [],
          remedies: [],
        };
      }),
};
