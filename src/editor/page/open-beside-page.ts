import * as vscode from 'vscode';
import type { PagePlace } from '../../pages/page-parts';
import { rangeInNote } from '../document-ranges';
import type { OpenJournal } from '../open-journal';

/** The column that a note is opened in: one that shows a text already, so that the page stays in sight. */
function columnForNote(panel: vscode.WebviewPanel): vscode.ViewColumn {
  const other = vscode.window.visibleTextEditors.find(
    (editor) => editor.viewColumn !== undefined && editor.viewColumn !== panel.viewColumn,
  );
  return other?.viewColumn ?? vscode.ViewColumn.Beside;
}

/** Opens a note beside a page, at the place that the page named. */
export async function openBesidePage(
  open: OpenJournal | undefined,
  place: PagePlace,
  panel: vscode.WebviewPanel,
): Promise<void> {
  const note = open?.journal.file(place.note);
  if (!open || !note) return;
  const { start } = rangeInNote(note, place.range);
  await vscode.window.showTextDocument(open.uriOf(place.note), {
    selection: new vscode.Range(start, start),
    viewColumn: columnForNote(panel),
    preview: true,
  });
}
