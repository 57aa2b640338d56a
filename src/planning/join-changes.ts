import { mergeEdits } from './merge-edits';
import type { NoteChange } from './note-change';

/** Changes with the edits of each note together, so that a note is changed once. */
export function joinChanges(changes: readonly NoteChange[]): readonly NoteChange[] {
  const joined: NoteChange[] = [];
  for (const change of changes) {
    const index = joined.findIndex((one) => one.note === change.note && one.kind === 'edit');
    const known = joined[index];
    if (known?.kind === 'edit' && change.kind === 'edit')
      joined[index] = { ...known, edits: mergeEdits(known.edits, change.edits) };
    else joined.push(change);
  }
  return joined;
}
