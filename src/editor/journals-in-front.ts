import * as vscode from 'vscode';
import type { OpenJournal, OpenJournals } from './open-journal';

/** The journal of the note in front, or all of them when it belongs to none. */
export function journalsInFront(journals: OpenJournals): readonly OpenJournal[] {
  const uri = vscode.window.activeTextEditor?.document.uri;
  const found = uri && journals.find(uri)?.journal;
  return found ? [found] : journals.all();
}
