import * as vscode from 'vscode';
import { starterJournal } from '../../planning/starter-journal';
import { applyChanges } from '../apply-changes';
import type { FeatureContext } from '../feature-context';
import { clockDate, machineZone, readSettings } from '../settings';
import { noteUri } from '../workspace-note-source';
import { registerCommand } from './run-command';

async function chooseFolder(): Promise<vscode.Uri | undefined> {
  const folders = vscode.workspace.workspaceFolders ?? [];
  if (folders.length === 0) {
    const open = vscode.l10n.t('Open folder');
    const answer = await vscode.window.showInformationMessage(
      vscode.l10n.t('Open the folder that is to hold your journal first.'),
      open,
    );
    if (answer === open) await vscode.commands.executeCommand('vscode.openFolder');
    return undefined;
  }
  if (folders.length === 1) return folders[0]?.uri;
  return (await vscode.window.showWorkspaceFolderPick())?.uri;
}

/** Which of `paths` stand below `folder` already. */
async function existing(folder: vscode.Uri, paths: readonly string[]): Promise<ReadonlySet<string>> {
  const found = new Set<string>();
  for (const path of paths) {
    try {
      await vscode.workspace.fs.stat(noteUri(folder, path));
      found.add(path);
    } catch {
      // Not there, and so to be created.
    }
  }
  return found;
}

/** Creates a first journal in the opened folder; files that are there already are left alone. */
export function registerStarterJournalCommand(context: FeatureContext): vscode.Disposable {
  return registerCommand(context, 'createStarterJournal', async () => {
    const folder = await chooseFolder();
    if (!folder) return;
    const settings = readSettings(folder);
    const zone = settings.timeZone ?? machineZone();
    const today = settings.today ?? clockDate(zone);
    const wanted = starterJournal({ root: '', today, zone, exists: () => false });
    const there = await existing(
      folder,
      wanted.map((change) => change.note),
    );
    const changes = starterJournal({ root: '', today, zone, exists: (path) => there.has(path) });
    await applyChanges({ uriOf: (path) => noteUri(folder, path) }, changes);
    const goals = noteUri(folder, 'goals.md');
    await vscode.window.showTextDocument(await vscode.workspace.openTextDocument(goals));
  });
}
