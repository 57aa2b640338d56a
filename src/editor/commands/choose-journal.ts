import * as vscode from 'vscode';
import type { OpenJournal, OpenJournals } from '../open-journal';

/** The journal of the note in the active editor. */
export function activeJournal(journals: OpenJournals): OpenJournal | undefined {
  const uri = vscode.window.activeTextEditor?.document.uri;
  return uri && journals.find(uri)?.journal;
}

/**
 * The journal that a command is about: the one named, the active note's, the only one, or the one that the person
 * picks. `undefined` when there is none or nothing was picked.
 * @param id Address of a journal, as views and pages hand it over.
 */
export async function chooseJournal(journals: OpenJournals, id?: unknown): Promise<OpenJournal | undefined> {
  await journals.ready;
  const named = typeof id === 'string' ? journals.byId(id) : undefined;
  if (named) return named;
  const active = activeJournal(journals);
  if (active) return active;
  const all = journals.all();
  if (all.length === 0) {
    const create = vscode.l10n.t('Create a starter journal');
    const answer = await vscode.window.showInformationMessage(
      vscode.l10n.t('There is no training journal in this workspace yet.'),
      create,
    );
    if (answer === create) await vscode.commands.executeCommand('trainingJournal.createStarterJournal');
    return undefined;
  }
  if (all.length === 1) return all[0];
  const picked = await vscode.window.showQuickPick(
    all.map((journal) => ({
      label: journal.title,
      description: vscode.workspace.asRelativePath(journal.uri),
      journal,
    })),
    { title: vscode.l10n.t('Whose journal?') },
  );
  return picked?.journal;
}
