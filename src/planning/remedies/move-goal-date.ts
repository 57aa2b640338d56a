import { message } from '../../training/wording';
import { foundGoal } from './goal-lines';
import type { Remedy, RemedyMaker } from './remedy';

/** Puts the goal's date to the end of its forecast: the day by which the readings arrive at the pace they have. */
export const moveGoalDate: RemedyMaker = function* (mend): Generator<Remedy> {
  const goal = foundGoal(mend);
  const note = goal && mend.journal.note(goal.note);
  const by = goal?.entry.by;
  const { latest } = mend.finding.facts;
  if (!note || !by || typeof latest !== 'string') return;
  yield {
    name: 'move-goal-date',
    title: message('Move the date to {0}, when the readings arrive at the latest', latest),
    changes: [
      { kind: 'edit', note: note.path, before: note.text, edits: [{ range: by.range, text: latest }] },
    ],
    preferred: false,
  };
};
