import * as vscode from 'vscode';

/**
 * Shows one of the notes that were written, and says what was done. Undo goes by the note in front: with one of them
 * there, it takes all of them back.
 */
export async function showWritten(note: vscode.Uri, words: string): Promise<void> {
  await vscode.window.showTextDocument(note);
  vscode.window.setStatusBarMessage(words, 8000);
}
