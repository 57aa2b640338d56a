import type { Goal, Journal } from '../../journal/journal';
import type { Note } from '../../journal/note';
import { message } from '../../training/wording';
import { usualLineEnding } from '../day-note';
import { insertLines } from '../insert-lines';
import { withLineEnding } from '../line-ending';
import type { NoteChange } from '../note-change';
import type { Remedy, RemedyMaker } from './remedy';

/** The note that holds the goals: that of the last one. */
function goalsNote(journal: Journal): { readonly note: Note; readonly last?: Goal } | undefined {
  const path = journal.root === '' ? 'goals.md' : `${journal.root}/goals.md`;
  const last = [...journal.plan.goals.values()].at(-1);
  const note = journal.note(last?.note ?? path);
  return note && { note, ...(last ? { last } : {}) };
}

/** The mark of the heading that the goal has for itself, such as `##`. */
function ownHeading({ reading }: Note, goal: Goal): string | undefined {
  const before = goal.entry.range.start;
  const heading = reading.headings.filter(({ range }) => range.end <= before).at(-1);
  const between = reading.entries.some(
    ({ range }) => heading && range.start > heading.range.end && range.end < before,
  );
  return heading && !between && heading.depth > 1 ? '#'.repeat(heading.depth) : undefined;
}

function addGoalLines(journal: Journal, id: string): readonly NoteChange[] {
  const found = goalsNote(journal);
  const line = `- #goal ${id}`;
  if (!found) {
    const path = journal.root === '' ? 'goals.md' : `${journal.root}/goals.md`;
    const text = withLineEnding(`# Goals\n\n${line}\n`, usualLineEnding(journal));
    return [{ kind: 'create', note: path, text }];
  }
  const { note, last } = found;
  const heading = last && ownHeading(note, last);
  const isApart =
    /(?:^|[\r\n])[ \t]*(?:\r\n|\r|\n)?$/.test(note.text) && /(?:\r\n\r\n|\n\n|\r\r)$/.test(note.text);
  const block = heading ? `${isApart ? '' : '\n'}${heading} ${id}\n\n${line}` : line;
  const edit = insertLines(note.text, [block], []);
  return edit ? [{ kind: 'edit', note: note.path, before: note.text, edits: [edit] }] : [];
}

/** Opens the goal that is named and does not exist, behind the journal's other goals. */
export const addGoal: RemedyMaker = function* ({ journal, finding }): Generator<Remedy> {
  const { goal } = finding.facts;
  if (goal === undefined) return;
  yield {
    name: 'add-goal',
    title: message('Add the goal {0}', goal),
    changes: addGoalLines(journal, String(goal)),
    preferred: finding.remedies[0] === 'add-goal',
  };
};
