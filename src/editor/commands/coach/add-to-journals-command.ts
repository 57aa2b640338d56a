import * as vscode from 'vscode';
import {
  addPlanLine,
  type LineInJournal,
  type PlanLine,
  planLinesOf,
  planLineWords,
} from '../../../planning/coach/plan-lines';
import { applyAcrossJournals } from '../../across-journals';
import type { FeatureContext } from '../../feature-context';
import type { OpenJournal } from '../../open-journal';
import { showWritten } from '../../show-written';
import { registerCommand } from '../run-command';
import { severalJournals, under18Words } from './pick-athlete';

interface LineRow extends vscode.QuickPickItem {
  readonly line?: PlanLine;
  readonly owner?: OpenJournal;
}

interface AthleteRow extends vscode.QuickPickItem {
  readonly journal: OpenJournal;
  readonly result: LineInJournal;
}

async function askLine(journals: readonly OpenJournal[]): Promise<LineRow | undefined> {
  const rows = journals.flatMap((owner): readonly LineRow[] => {
    const lines = planLinesOf(owner.journal);
    if (lines.length === 0) return [];
    return [
      { label: owner.title, kind: vscode.QuickPickItemKind.Separator },
      ...lines.map((line) => ({
        label: planLineWords(line),
        ...(line.is === 'need' && line.need.goal !== undefined ? { description: line.need.goal } : {}),
        line,
        owner,
      })),
    ];
  });
  if (rows.length === 0) {
    void vscode.window.showInformationMessage(
      vscode.l10n.t('No journal has a routine or a need yet: write it into one of them first.'),
    );
    return undefined;
  }
  return vscode.window.showQuickPick([...rows], {
    title: vscode.l10n.t('Which routine or need?'),
    matchOnDescription: true,
  });
}

/** What a row of the preview says; the path of a note below its journal's folder. */
function resultWords({ state, withRoutine, changes }: LineInJournal, journal: OpenJournal): string {
  const { root } = journal.journal;
  const notes = changes
    .map(({ note, kind }) => {
      const path = root === '' ? note : note.slice(root.length + 1);
      return kind === 'create' ? vscode.l10n.t('new note {0}', path) : path;
    })
    .join(', ');
  switch (state) {
    case 'added':
      return withRoutine === undefined
        ? vscode.l10n.t('added to {0}', notes)
        : vscode.l10n.t('added to {0}, with the routine {1}', notes, withRoutine);
    case 'there':
      return vscode.l10n.t('stands there already; nothing is written');
    case 'taken':
      return vscode.l10n.t(
        'a routine of this name with other words stands there, and stays; nothing is written',
      );
  }
}

async function askAthletes(
  line: PlanLine,
  others: readonly OpenJournal[],
): Promise<readonly AthleteRow[] | undefined> {
  const rows = others.map((journal): AthleteRow => {
    const result = addPlanLine(journal.journal, line);
    return {
      label: journal.title,
      description: resultWords(result, journal),
      ...(result.state === 'added' && journal.journal.plan.athlete?.minor
        ? { detail: `$(warning) ${under18Words(journal)}` }
        : {}),
      picked: result.state === 'added',
      journal,
      result,
    };
  });
  return vscode.window.showQuickPick(rows, {
    title: vscode.l10n.t('Into whose journals? {0}', planLineWords(line)),
    placeHolder: vscode.l10n.t('Enter writes into the ticked journals, Escape writes nothing'),
    canPickMany: true,
    ignoreFocusOut: true,
  });
}

/** Adds one routine or need to several journals at once: shown first, written as one step that one undo takes back. */
export function registerAddToJournalsCommand(context: FeatureContext): vscode.Disposable {
  return registerCommand(context, 'addToJournals', async () => {
    const journals = await severalJournals(context.journals);
    const asked = journals && (await askLine(journals));
    if (!journals || !asked?.line) return;
    const { line, owner } = asked;
    const picked = await askAthletes(
      line,
      journals.filter((journal) => journal !== owner),
    );
    const added = (picked ?? []).filter(({ result }) => result.changes.length > 0);
    const [first] = added;
    const [change] = first?.result.changes ?? [];
    if (!first || !change) return;
    await applyAcrossJournals(added.map(({ journal, result }) => ({ journal, changes: result.changes })));
    await showWritten(
      first.journal.uriOf(change.note),
      added.length === 1
        ? vscode.l10n.t('Added to 1 journal. Undo takes it back.')
        : vscode.l10n.t('Added to {0} journals. Undo takes it back in one step.', added.length),
    );
  });
}
