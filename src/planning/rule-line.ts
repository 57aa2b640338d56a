import type { Journal } from '../journal/journal';
import { insertLines } from './insert-lines';
import type { NoteChange } from './note-change';
import { noteOfMost } from './note-of-most';

/**
 * The change that adds a rule to the journal's own, behind the last one of the note in which most of them stand.
 * @param rule The tag as it is to be written, such as `#rule flexibility gap:48h`.
 */
export function addRuleLine(journal: Journal, rule: string): readonly NoteChange[] {
  const path = noteOfMost(journal, journal.plan.rules, 'rules.md');
  const line = `- ${rule}`;
  const note = journal.note(path);
  if (!note) return [{ kind: 'create', note: path, text: `${line}\n` }];
  const edit = insertLines(note.text, [line], [(entry) => entry.tag === 'rule']);
  return edit ? [{ kind: 'edit', note: path, before: note.text, edits: [edit] }] : [];
}
