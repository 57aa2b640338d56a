import * as vscode from 'vscode';
import type { OpenJournal, OpenJournals } from '../../open-journal';

/**
 * Asks for one of the athletes; the only one is not asked for.
 * @returns `undefined` when none was picked, or there is none.
 */
export async function pickAthlete(
  journals: readonly OpenJournal[],
  title: string,
): Promise<OpenJournal | undefined> {
  if (journals.length < 2) return journals[0];
  const picked = await vscode.window.showQuickPick(
    journals.map((journal) => ({
      label: journal.title,
      description: vscode.workspace.asRelativePath(journal.uri),
      journal,
    })),
    { title },
  );
  return picked?.journal;
}

/** All journals when there are several; otherwise says that it takes more than one. */
export async function severalJournals(journals: OpenJournals): Promise<readonly OpenJournal[] | undefined> {
  await journals.ready;
  const all = journals.all();
  if (all.length > 1) return all;
  void vscode.window.showInformationMessage(
    vscode.l10n.t('This takes the journals of several athletes, one in a folder of its own each.'),
  );
  return undefined;
}

/** What is said before anything is written into the plan of an athlete under 18. */
export function under18Words({ title }: OpenJournal): string {
  return vscode.l10n.t('{0} is under 18: a plan is made with a licensed professional and a guardian', title);
}
