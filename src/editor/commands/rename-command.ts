import * as vscode from 'vscode';
import { type NamedPlace, type NamedThing, nameAt, namedPlaces } from '../../journal/named-places';
import { type NameRefusal, refusedName, renameChanges } from '../../planning/rename';
import { applyChanges } from '../apply-changes';
import { offsetInNote, rangeInNote } from '../document-ranges';
import type { FeatureContext } from '../feature-context';
import type { OpenJournal } from '../open-journal';
import { chooseJournal } from './choose-journal';
import { registerCommand } from './run-command';

interface ThingInHand {
  readonly journal: OpenJournal;
  readonly thing: NamedThing;
}

function wordFor(thing: NamedThing): string {
  switch (thing.of) {
    case 'goal':
      return vscode.l10n.t('goal');
    case 'routine':
      return vscode.l10n.t('routine');
    case 'metric':
      return vscode.l10n.t('metric of {0}', thing.goal);
  }
}

/** The name under the cursor. */
function thingUnderCursor({ journals }: FeatureContext): ThingInHand | undefined {
  const editor = vscode.window.activeTextEditor;
  const found = editor && journals.noteOf(editor.document);
  if (!editor || !found) return undefined;
  const offset = offsetInNote(found.note, editor.selection.active);
  const named = nameAt(found.journal.journal, found.note, offset);
  return named && { journal: found.journal, thing: named.thing };
}

/** One of all names of a journal, picked by the person. */
async function pickThing(context: FeatureContext): Promise<ThingInHand | undefined> {
  const journal = await chooseJournal(context.journals);
  if (!journal) return undefined;
  const { goals, routines } = journal.journal.plan;
  const things: NamedThing[] = [...goals.values()].flatMap(({ id, metrics }) => [
    { of: 'goal' as const, id },
    ...metrics.map(({ name }) => ({ of: 'metric' as const, id: name, goal: id })),
  ]);
  things.push(...[...routines.keys()].map((id) => ({ of: 'routine' as const, id })));
  if (things.length === 0) {
    void vscode.window.showInformationMessage(
      vscode.l10n.t('There is no goal and no routine in this journal yet.'),
    );
    return undefined;
  }
  const picked = await vscode.window.showQuickPick(
    things.map((thing) => ({ label: thing.id, description: wordFor(thing), thing })),
    { title: vscode.l10n.t('Which name is to be changed?'), matchOnDescription: true },
  );
  return picked && { journal, thing: picked.thing };
}

function refusal(reason: NameRefusal, wanted: string): string {
  switch (reason) {
    case 'not-a-word':
      return vscode.l10n.t('Write one word of letters, digits and hyphens, such as low-split.');
    case 'taken':
      return vscode.l10n.t('There is a {0} already.', wanted);
    case 'kind-or-region':
      return vscode.l10n.t(
        '{0} is a kind of session or a region; rules about it would count for the goal.',
        wanted,
      );
  }
}

async function askName({ journal, thing }: ThingInHand): Promise<string | undefined> {
  const typed = await vscode.window.showInputBox({
    title: vscode.l10n.t('Rename {0} ({1})', thing.id, wordFor(thing)),
    prompt: vscode.l10n.t(
      'The new name. It is shown first at every place that names it; remarks and titles stay as they are.',
    ),
    value: thing.id,
    validateInput(text) {
      const reason = refusedName(journal.journal, thing, text.trim());
      return reason && refusal(reason, text.trim());
    },
  });
  return typed?.trim();
}

interface PlaceRow extends vscode.QuickPickItem {
  readonly place?: NamedPlace;
}

/** The places under the names of their notes, each with the line as it is written. */
function rowsOf(journal: OpenJournal, places: readonly NamedPlace[]): PlaceRow[] {
  return places.flatMap((place, index): PlaceRow[] => {
    const { note, name } = place;
    const { line } = rangeInNote(note, name.range).start;
    const text = note.text.slice(note.lineStarts[line], note.lineStarts[line + 1]).trim();
    const row = { label: text, description: vscode.l10n.t('line {0}', line + 1), picked: true, place };
    if (places[index - 1]?.note === note) return [row];
    const label = vscode.workspace.asRelativePath(journal.uriOf(note.path));
    return [{ label, kind: vscode.QuickPickItemKind.Separator }, row];
  });
}

/** Shows every place that would change, all of them ticked; `undefined` when the person leaves. */
async function choosePlaces(
  { journal, thing }: ThingInHand,
  wanted: string,
): Promise<readonly NamedPlace[] | undefined> {
  const picked = await vscode.window.showQuickPick(rowsOf(journal, namedPlaces(journal.journal, thing)), {
    canPickMany: true,
    title: vscode.l10n.t('{0} becomes {1}', thing.id, wanted),
    placeHolder: vscode.l10n.t('Every ticked line is changed with Enter; an unticked one keeps the old name'),
    matchOnDescription: true,
  });
  return picked?.flatMap(({ place }) => place ?? []);
}

/**
 * Gives a goal, a routine or a metric another name at every place that names it: the one under the cursor, or one that
 * is picked. Each place is shown before anything is written, and can be left out; one undo takes all of it back.
 */
export function registerRenameCommand(context: FeatureContext): vscode.Disposable {
  return registerCommand(context, 'rename', async () => {
    await context.journals.ready;
    const inHand = thingUnderCursor(context) ?? (await pickThing(context));
    const wanted = inHand && (await askName(inHand));
    if (!inHand || !wanted || wanted === inHand.thing.id) return;
    const places = await choosePlaces(inHand, wanted);
    if (!places || places.length === 0) return;
    const changes = renameChanges(places, wanted);
    await applyChanges(inHand.journal, changes);
    vscode.window.setStatusBarMessage(
      vscode.l10n.t('{0} is {1} now, in {2} notes.', inHand.thing.id, wanted, changes.length),
      8000,
    );
  });
}
