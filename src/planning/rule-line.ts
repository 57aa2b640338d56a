import type { Journal } from '../journal/journal';
import type { NotePath } from '../journal/note';
import { joinPath } from '../journal/note-path';
import { insertLines } from './insert-lines';
import type { NoteChange } from './note-change';

/** The note in which most rules stand, else the journal's own note, else `rules.md` in its folder. */
function rulesNote(journal: Journal): NotePath {
  const counts = new Map<NotePath, number>();
  for (const { note } of journal.plan.rules) counts.set(note, (counts.get(note) ?? 0) + 1);
  const [most] = [...counts].sort(([, one], [, other]) => other - one);
  if (most) return most[0];
  const own = joinPath(journal.root, 'journal.md');
  return journal.note(own) ? own : joinPath(journal.root, 'rules.md');
}

/**
 * The change that adds a rule to the journal's own, behind the last one of the note in which most of them stand.
 * @param rule The tag as it is to be written, such as `#rule flexibility gap:48h`.
 */
export function addRuleLine(journal: Journal, rule: string): readonly NoteChange[] {
  const path = rulesNote(journal);
  const line = `- ${rule}`;
  const note = journal.note(path);
  if (!note) return [{ kind: 'create', note: path, text: `${line}\n` }];
  const edit = insertLines(note.text, [line], [(entry) => entry.tag === 'rule']);
  return edit ? [{ kind: 'edit', note: path, before: note.text, edits: [edit] }] : [];
}
