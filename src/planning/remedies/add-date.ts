import type { Goal } from '../../journal/journal';
import { addDays, type IsoDate } from '../../notation/time/iso-date';
import { addFieldEdits } from '../../notation/write-entry';
import { message } from '../../training/wording';
import { foundGoal } from './goal-lines';
import type { Remedy, RemedyMaker, ToMend } from './remedy';

/** Weeks offered where no event gives a date: half a season, a season, half a year. Common practice, no source. */
const weeksOffered = [12, 8, 26] as const;

function remedy(
  { journal }: ToMend,
  goal: Goal,
  date: IsoDate,
  title: Remedy['title'],
  preferred: boolean,
): Remedy {
  const note = journal.note(goal.note);
  const edits = note ? addFieldEdits(note.text, goal.entry, { name: 'by', text: date }) : [];
  return {
    name: 'add-date',
    title,
    changes: note ? [{ kind: 'edit', note: note.path, before: note.text, edits }] : [],
    preferred,
  };
}

/** Gives the goal a date: that of its own next event, or one some weeks ahead, which is only a beginning. */
export const addDate: RemedyMaker = function* (mend): Generator<Remedy> {
  const goal = foundGoal(mend);
  if (!goal) return;
  const { today } = mend.options;
  const [event] = mend.journal.plan.events
    .filter(({ goals, date }) => goals.includes(goal.id) && date > today)
    .sort((one, other) => (one.date < other.date ? -1 : 1));
  if (event)
    yield remedy(mend, goal, event.date, message('Set the date to {0}, {1}', event.date, event.name), true);
  for (const [index, weeks] of weeksOffered.entries()) {
    const date = addDays(today, weeks * 7);
    const title = message('Set the date to {0}, {1} weeks from today', date, weeks);
    yield remedy(mend, goal, date, title, !event && index === 0);
  }
};
