import * as vscode from 'vscode';
import { addWeeks, isoWeekOf } from '../../notation/time/iso-week';
import type { FeatureContext } from '../feature-context';
import type { OpenJournal } from '../open-journal';
import { planAndWrite } from '../plan-preview/plan-and-write';
import { planOptions } from '../plan-preview/plan-options';
import { showWritten } from '../show-written';
import { chooseJournal } from './choose-journal';
import { registerCommand } from './run-command';

const command = 'writeNextWeek';

function nextWeek(journal: OpenJournal) {
  return planOptions(journal, [addWeeks(isoWeekOf(journal.today()), 1)], 'new');
}

/**
 * Lays next week's sessions into its day notes: shown first, with the reasons, written as one step that one undo takes
 * back. What stands in the notes stays.
 */
export function registerNextWeekCommand(context: FeatureContext): vscode.Disposable {
  return registerCommand(context, command, async (id) => {
    const journal = await chooseJournal(context.journals, id);
    if (!journal) return;
    const written = await planAndWrite(context, journal, {
      optionsOf: nextWeek,
      nothingToDo: ({ weeks }) =>
        vscode.l10n.t(
          '{0} already holds all that your goals ask for. There is nothing to add.',
          weeks[0] ?? '',
        ),
      again: ({ id: address }) => void vscode.commands.executeCommand(`trainingJournal.${command}`, address),
    });
    const [first] = written ?? [];
    if (!written || !first) return;
    await showWritten(
      journal.uriOf(first.note),
      vscode.l10n.t('{0} notes written. Undo takes them back in one step.', written.length),
    );
  });
}
