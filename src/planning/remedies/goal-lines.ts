import type { Goal, Journal } from '../../journal/journal';
import type { Entry } from '../../notation/entries';
import { insertLines } from '../insert-lines';
import type { NoteChange } from '../note-change';
import type { ToMend } from './remedy';

/** The goal that a finding speaks of. */
export function foundGoal({ journal, finding }: ToMend): Goal | undefined {
  return journal.plan.goals.get(String(finding.facts.goal));
}

/** Whether an entry stands within the goal's scope, in a reading of the same text. */
function isWithin(goal: Goal, entry: Entry): boolean {
  return goal.entry.scope.start <= entry.range.start && entry.range.start < goal.entry.scope.end;
}

/**
 * Adds a line beneath a goal: behind the last line of the goal with one of the tags `behind`, the most wanted first,
 * or behind the goal itself.
 */
export function addUnderGoal(
  journal: Journal,
  goal: Goal,
  line: string,
  behind: readonly Entry['tag'][],
): readonly NoteChange[] {
  const note = journal.note(goal.note);
  if (!note) return [];
  const edit = insertLines(
    note.text,
    [line],
    [
      ...behind.map((tag) => (entry: Entry) => entry.tag === tag && isWithin(goal, entry)),
      (entry) => entry.tag === 'goal' && entry.range.start === goal.entry.range.start,
    ],
  );
  return edit ? [{ kind: 'edit', note: note.path, before: note.text, edits: [edit] }] : [];
}
