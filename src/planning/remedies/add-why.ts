import { message } from '../../training/wording';
import { addUnderGoal, foundGoal } from './goal-lines';
import type { Remedy, RemedyMaker } from './remedy';

/** Adds an empty `#why` beneath the goal; the words are the athlete's own. */
export const addWhy: RemedyMaker = function* (mend): Generator<Remedy> {
  const goal = foundGoal(mend);
  // One that waits to be filled in is enough.
  if (!goal || goal.whys.length > 0) return;
  yield {
    name: 'add-why',
    title: message('Add a #why line, to be filled in: it stays private'),
    changes: addUnderGoal(mend.journal, goal, '- #why ', []),
    preferred: true,
  };
};
