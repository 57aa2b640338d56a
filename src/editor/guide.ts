import * as vscode from 'vscode';
import type { FindingCode } from '../training/finding';
import { guidePageName } from './guide-page';

const openGuide = 'trainingJournal.openGuide';

/** An address that opens a finding's page of the guide when it is followed inside the editor. */
export function guidePage(code: FindingCode): vscode.Uri {
  const argument = encodeURIComponent(JSON.stringify([`findings/${code}.md`]));
  return vscode.Uri.parse(`command:${openGuide}?${argument}`);
}

/** Opens a page of the guide, such as `findings/bad-date.md`, in the editor's own preview. */
async function openPage(extensionUri: vscode.Uri, page: unknown): Promise<void> {
  const uri = vscode.Uri.joinPath(extensionUri, 'media', 'guide', ...guidePageName(page).split('/'));
  // Locked, so that the page stays when the person goes back to a note.
  await vscode.commands.executeCommand('markdown.showPreview', uri, [uri], { locked: true });
}

/** The command that opens the guide: its first page, or the one that is named. */
export function registerGuide(extensionUri: vscode.Uri): vscode.Disposable {
  return vscode.commands.registerCommand(openGuide, (page?: unknown) => openPage(extensionUri, page));
}
