import * as vscode from 'vscode';
import { isoWeekOf } from '../../notation/time/iso-week';
import type { NoteChange } from '../../planning/note-change';
import type { FeatureContext } from '../feature-context';
import type { OpenJournal } from '../open-journal';
import { planAndWrite } from '../plan-preview/plan-and-write';
import { planOptions } from '../plan-preview/plan-options';
import { chooseJournal } from './choose-journal';
import { registerCommand } from './run-command';

const command = 'rearrangeWeek';

function restOfWeek(journal: OpenJournal) {
  return planOptions(journal, [isoWeekOf(journal.today())], 'rearrange');
}

/** The address of a journal, as a quick fix hands it over, or as it stands in a row of a view. */
function journalIn(handed: unknown): unknown {
  return typeof handed === 'object' && handed !== null && 'journal' in handed ? handed.journal : handed;
}

/** Undo goes by the note in front: one of the changed notes has to be there. */
async function showOneOf(journal: OpenJournal, written: readonly NoteChange[]): Promise<void> {
  const uris = written.map(({ note }) => journal.uriOf(note));
  const active = vscode.window.activeTextEditor?.document.uri.toString();
  const [first] = uris;
  if (first && !uris.some((uri) => uri.toString() === active)) await vscode.window.showTextDocument(first);
}

/**
 * Arranges the rest of the running week anew after a session was missed: it gets a place among the days that are left,
 * what is agreed with somebody stays, and as few others as can be are moved. Shown first, written as one step.
 */
export function registerRearrangeCommand(context: FeatureContext): vscode.Disposable {
  return registerCommand(context, command, async (handed) => {
    const journal = await chooseJournal(context.journals, journalIn(handed));
    if (!journal) return;
    const written = await planAndWrite(context, journal, {
      optionsOf: restOfWeek,
      nothingToDo: () =>
        vscode.l10n.t('This week holds all that your goals ask for. There is nothing to arrange anew.'),
      again: ({ id }) => void vscode.commands.executeCommand(`trainingJournal.${command}`, id),
    });
    if (!written) return;
    await showOneOf(journal, written);
    vscode.window.setStatusBarMessage(
      vscode.l10n.t('The rest of the week is arranged anew. Undo takes it back in one step.'),
      8000,
    );
  });
}
