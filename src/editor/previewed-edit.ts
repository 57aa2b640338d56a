import * as vscode from 'vscode';
import { lineStarts } from '../notation/source-range';
import type { NoteChange } from '../planning/note-change';
import type { NotePlaces } from './apply-changes';
import { editorRange } from './document-ranges';

/**
 * An edit that the editor shows place by place before it makes it; what is unticked there is left out.
 * @param about what the editor writes over the places
 */
export function previewedEdit(
  places: NotePlaces,
  changes: readonly NoteChange[],
  about: { readonly label: string; readonly description?: string },
): vscode.WorkspaceEdit {
  const metadata = { ...about, needsConfirmation: true };
  const edit = new vscode.WorkspaceEdit();
  for (const change of changes) {
    const uri = places.uriOf(change.note);
    if (change.kind === 'create') {
      edit.createFile(uri, { contents: new TextEncoder().encode(change.text) }, metadata);
      continue;
    }
    const starts = lineStarts(change.before);
    for (const { range, text } of change.edits) edit.replace(uri, editorRange(starts, range), text, metadata);
  }
  return edit;
}
