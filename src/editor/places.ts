import * as vscode from 'vscode';
import type { NotePlace } from '../journal/note';
import { registerCommand } from './commands/run-command';
import { rangeInNote } from './document-ranges';
import type { FeatureContext } from './feature-context';

/** A place of a journal, as views and pages hand it to `trainingJournal.openPlace`. */
export interface JournalPlace extends NotePlace {
  /** Address of the journal. */
  readonly journal: string;
}

function isPlace(value: unknown): value is JournalPlace {
  return (
    typeof value === 'object' && value !== null && 'journal' in value && 'note' in value && 'range' in value
  );
}

/** The command that opens a note at a place. */
export function registerPlaces(context: FeatureContext): vscode.Disposable {
  return registerCommand(context, 'openPlace', async (place) => {
    if (!isPlace(place)) return;
    const journal = context.journals.byId(place.journal);
    const note = journal?.journal.file(place.note);
    if (!journal || !note) return;
    const range = rangeInNote(note, place.range);
    await vscode.window.showTextDocument(journal.uriOf(place.note), {
      selection: new vscode.Range(range.start, range.start),
      preview: true,
    });
  });
}
