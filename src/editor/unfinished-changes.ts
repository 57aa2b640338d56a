import * as vscode from 'vscode';
import type { NotePath } from '../journal/note';
import { takenBack } from '../planning/change-outcome';
import {
  applyEdit,
  IncompleteChangeError,
  makeMissing,
  outcomeNow,
  refuseStale,
  StaleChangeError,
  savableNotes,
  saveQuietly,
  workspaceEditFor,
} from './apply-changes';

/**
 * Makes and saves what an earlier try did not.
 * @throws StaleChangeError when a note that is still missing reads otherwise than it did; nothing is written then.
 * @throws IncompleteChangeError when still not everything stands.
 */
export async function finishChanges({ places, outcome, unsaved }: IncompleteChangeError): Promise<void> {
  const changes = [...outcome.made, ...outcome.missing, ...outcome.other];
  const { missing } = await outcomeNow(places, changes);
  await refuseStale(places, missing);
  const savable = [...savableNotes(places, missing), ...unsaved.map((note) => places.uriOf(note))];
  await makeMissing(places, changes, missing, savable);
}

/**
 * Takes back what stands of unfinished changes. A note in which someone has written since stays as it is.
 * @returns the notes in which it could not be taken back.
 */
export async function takeBackChanges({
  places,
  outcome,
}: IncompleteChangeError): Promise<readonly NotePath[]> {
  const { made } = await outcomeNow(places, outcome.made);
  const savable = savableNotes(places, made);
  await applyEdit(workspaceEditFor(places, made.map(takenBack)));
  await saveQuietly(savable);
  const now = await outcomeNow(places, outcome.made);
  return [...now.made, ...now.other].map(({ note }) => note);
}

async function finish(error: IncompleteChangeError): Promise<void> {
  try {
    await finishChanges(error);
    vscode.window.setStatusBarMessage(vscode.l10n.t('Everything is written now.'), 8000);
  } catch (again) {
    if (again instanceof IncompleteChangeError) await tellOfUnfinished(again);
    else if (again instanceof StaleChangeError) void vscode.window.showWarningMessage(again.message);
    else throw again;
  }
}

async function takeBack(error: IncompleteChangeError): Promise<void> {
  const left = await takeBackChanges(error);
  if (left.length === 0) vscode.window.setStatusBarMessage(vscode.l10n.t('The notes read as before.'), 8000);
  else
    void vscode.window.showWarningMessage(
      vscode.l10n.t(
        'Not taken back in {0}: these notes cannot be written, or have changed since.',
        left.map((note) => vscode.workspace.asRelativePath(error.places.uriOf(note))).join(', '),
      ),
    );
}

/** Says what of a set of changes stands and what is missing, and offers to finish it and to take it back. */
export async function tellOfUnfinished(error: IncompleteChangeError): Promise<void> {
  const { made, missing } = error.outcome;
  const rest = made.length === 0 ? vscode.l10n.t('Try again') : vscode.l10n.t('Write the rest');
  const back = vscode.l10n.t('Take it back');
  const answer = await vscode.window.showWarningMessage(
    error.message,
    ...(missing.length + error.unsaved.length > 0 ? [rest] : []),
    ...(made.length > 0 ? [back] : []),
  );
  if (answer === rest) await finish(error);
  if (answer === back) await takeBack(error);
}

/** Says that notes have changed since something was planned, and offers to plan it again. */
export async function tellOfStale(error: StaleChangeError, again: () => unknown): Promise<void> {
  const planAgain = vscode.l10n.t('Plan again');
  const answer = await vscode.window.showWarningMessage(error.message, planAgain);
  if (answer !== planAgain) return;
  // The notes may have changed a moment ago, before anything was told of it.
  await vscode.commands.executeCommand('trainingJournal.refresh');
  await again();
}

/** Says that notes have changed since something was planned, and that it is planned again; ends when they are read. */
export async function tellOfNewPlan(): Promise<void> {
  await vscode.commands.executeCommand('trainingJournal.refresh');
  void vscode.window.showWarningMessage(
    vscode.l10n.t(
      'The notes have changed since this was planned. Nothing was written; this is the new plan.',
    ),
  );
}
