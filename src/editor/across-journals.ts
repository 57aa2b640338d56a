import * as vscode from 'vscode';
import type { NoteChange } from '../planning/note-change';
import { applyChanges, type NotePlaces } from './apply-changes';

/** Changes of one of several journals. */
export interface ChangesOfJournal {
  readonly journal: NotePlaces;
  readonly changes: readonly NoteChange[];
}

/** Notes of several journals go by their addresses: two journals may each have a `journal.md`. */
const byAddress: NotePlaces = { uriOf: (note) => vscode.Uri.parse(note, true) };

/**
 * Makes changes in several journals as one edit that one undo takes back; nothing is written when a note of any of them
 * has changed meanwhile.
 * @throws what {@link applyChanges} throws
 */
export async function applyAcrossJournals(all: readonly ChangesOfJournal[]): Promise<void> {
  await applyChanges(
    byAddress,
    all.flatMap(({ journal, changes }) =>
      changes.map((change) => ({ ...change, note: journal.uriOf(change.note).toString() })),
    ),
  );
}
