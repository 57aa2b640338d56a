import * as vscode from 'vscode';
import { parseIsoDate } from '../notation/time/iso-date';
import { isoWeekOf } from '../notation/time/iso-week';
import type { NoteChange } from '../planning/note-change';
import { type Remedy, remediesFor } from '../planning/remedies';
import type { Finding, RemedyName } from '../training/finding';
import { applyChanges } from './apply-changes';
import { registerCommand } from './commands/run-command';
import { type Findings, findingSource, type ShownFinding } from './diagnostics';
import type { FeatureContext } from './feature-context';
import type { OpenJournal } from './open-journal';
import { say } from './sentences';

/** Each way to mend has a kind of its own, such as `quickfix.training.tick-as-done`, to which a key can be bound. */
function kindOf(name: RemedyName): vscode.CodeActionKind {
  return vscode.CodeActionKind.QuickFix.append('training').append(name);
}

const rearrangeKind = vscode.CodeActionKind.QuickFix.append('training').append('rearrange-week');

function actionFor(
  journal: OpenJournal,
  shown: ShownFinding,
  remedy: Remedy,
  isOnlyFinding: boolean,
): vscode.CodeAction {
  const action = new vscode.CodeAction(say(remedy.title), kindOf(remedy.name));
  action.diagnostics = [shown.diagnostic];
  action.isPreferred = remedy.preferred && isOnlyFinding;
  // A command looks at the notes as they are when it is taken; an edit would be made with the places of older texts.
  action.command = {
    command: 'trainingJournal.makeChanges',
    title: action.title,
    arguments: [journal, remedy.changes],
  };
  return action;
}

/** For a session that was missed in the running week: the rest of it is arranged anew, and shown before it is. */
function rearrangeAction(
  journal: OpenJournal,
  { finding, diagnostic }: ShownFinding,
): vscode.CodeAction | undefined {
  const date = finding.code === 'session-overdue' && parseIsoDate(String(finding.facts.date));
  if (!date || isoWeekOf(date) !== isoWeekOf(journal.today())) return undefined;
  const title = vscode.l10n.t('Rearrange the rest of this week');
  const action = new vscode.CodeAction(title, rearrangeKind);
  action.diagnostics = [diagnostic];
  action.command = { command: 'trainingJournal.rearrangeWeek', title, arguments: [journal.id] };
  return action;
}

/** Adds an action to those offered; one that mends two findings alike is offered once, for both. */
function addAction(actions: Map<string, vscode.CodeAction>, action: vscode.CodeAction, remedy: Remedy): void {
  const key = JSON.stringify([remedy.title, remedy.changes]);
  const same = actions.get(key);
  if (same) same.diagnostics = [...(same.diagnostics ?? []), ...(action.diagnostics ?? [])];
  else actions.set(key, action);
}

/** The finding behind a diagnostic of the editor, which hands back a copy. */
function shownFor(
  findings: Findings,
  uri: vscode.Uri,
  diagnostic: vscode.Diagnostic,
): ShownFinding | undefined {
  return findings
    .shownIn(uri)
    .find(
      (one) =>
        one.diagnostic.message === diagnostic.message && one.diagnostic.range.isEqual(diagnostic.range),
    );
}

/** Quick fixes for the findings under the cursor, each an edit that the editor can preview and undo. */
export function registerCodeActions(context: FeatureContext, findings: Findings): vscode.Disposable {
  // The editor asks at each move of the cursor; what a remedy takes to work out is spent once.
  const kept = new Map<Finding, readonly Remedy[]>();
  const remediesOf = (journal: OpenJournal, finding: Finding): readonly Remedy[] => {
    const options = { today: journal.today(), zone: journal.zone() };
    const remedies = kept.get(finding) ?? [...remediesFor(journal.journal, finding, options)];
    kept.set(finding, remedies);
    return remedies;
  };
  const provider: vscode.CodeActionProvider = {
    provideCodeActions(document, _range, { diagnostics, only }, token) {
      if (only && !only.intersects(vscode.CodeActionKind.QuickFix)) return [];
      const found = context.journals.noteOf(document);
      if (!found) return [];
      const own = diagnostics.filter((diagnostic) => diagnostic.source === findingSource);
      const actions = new Map<string, vscode.CodeAction>();
      for (const diagnostic of own) {
        if (token.isCancellationRequested) return undefined;
        const shown = shownFor(findings, document.uri, diagnostic);
        if (!shown) continue;
        const rearrange = rearrangeAction(found.journal, shown);
        if (rearrange && (!only || only.contains(rearrangeKind))) actions.set(rearrange.title, rearrange);
        for (const remedy of remediesOf(found.journal, shown.finding))
          if (!only || only.contains(kindOf(remedy.name)))
            addAction(actions, actionFor(found.journal, shown, remedy, own.length === 1), remedy);
      }
      return [...actions.values()];
    },
  };
  return vscode.Disposable.from(
    findings.onDidChange(() => kept.clear()),
    // Findings follow a keystroke a moment later; what was worked out for the text before it would hit other places.
    vscode.workspace.onDidChangeTextDocument(() => kept.clear()),
    vscode.languages.registerCodeActionsProvider({ language: 'markdown' }, provider, {
      providedCodeActionKinds: [vscode.CodeActionKind.QuickFix],
    }),
    registerCommand(
      context,
      'makeChanges',
      (journal, changes) => applyChanges(journal as OpenJournal, changes as readonly NoteChange[]),
      () => vscode.commands.executeCommand('editor.action.quickFix'),
    ),
  );
}
