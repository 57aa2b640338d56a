import * as vscode from 'vscode';

/** Asks where a page to print is saved. */
export async function askPrintedPlace(suggested: vscode.Uri): Promise<vscode.Uri | undefined> {
  return vscode.window.showSaveDialog({
    defaultUri: suggested,
    filters: { [vscode.l10n.t('Web page')]: ['html'] },
    title: vscode.l10n.t('Where is the sheet saved?'),
    saveLabel: vscode.l10n.t('Save'),
  });
}

/** The editor hands files to the system only where both are on one machine. */
function canOpenOutside(target: vscode.Uri): boolean {
  return (
    target.scheme === 'file' &&
    vscode.env.remoteName === undefined &&
    vscode.env.uiKind === vscode.UIKind.Desktop
  );
}

async function tellWritten(target: vscode.Uri): Promise<void> {
  const name = vscode.workspace.asRelativePath(target);
  if (!canOpenOutside(target)) {
    void vscode.window.showInformationMessage(
      vscode.l10n.t('{0} is written. Open it in a browser on your machine to print it.', name),
    );
    return;
  }
  const open = vscode.l10n.t('Open in the Browser');
  const answer = await vscode.window.showInformationMessage(vscode.l10n.t('{0} is written.', name), open);
  if (answer === open) await vscode.env.openExternal(target);
}

/**
 * Writes a page to print, and offers to open it in the system's browser.
 * @param name what the page is called where it could not be written
 * @returns whether it was written; ends when the file is there, and does not wait for the message to be read
 */
export async function writePrintedFile(target: vscode.Uri, html: string, name: string): Promise<boolean> {
  try {
    await vscode.workspace.fs.writeFile(target, new TextEncoder().encode(html));
  } catch (error) {
    if (!(error instanceof vscode.FileSystemError)) throw error;
    void vscode.window.showErrorMessage(vscode.l10n.t('{0} could not be written: {1}', name, error.message));
    return false;
  }
  void tellWritten(target);
  return true;
}
