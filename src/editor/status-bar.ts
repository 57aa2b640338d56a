import * as vscode from 'vscode';
import { editorWords } from './editor-words';
import type { FeatureContext } from './feature-context';
import { journalsInFront } from './journals-in-front';
import { viewContext } from './views/view-context';
import { weekStatus } from './week-status';

/** This week's done of planned, in the status bar. A click leads to what is due. */
export function registerStatusBar({ journals, onDidChangeDay }: FeatureContext): vscode.Disposable {
  const words = editorWords();
  const item = vscode.window.createStatusBarItem('trainingJournal.week', vscode.StatusBarAlignment.Left, 10);
  item.name = vscode.l10n.t('Training This Week');
  item.command = 'trainingJournal.due.focus';
  const show = (): void => {
    const status = weekStatus(journalsInFront(journals).map((open) => viewContext(open, words)));
    if (!status) {
      item.hide();
      return;
    }
    item.text = status.text;
    item.tooltip = status.tooltip;
    item.accessibilityInformation = { label: status.accessibilityLabel };
    item.show();
  };
  show();
  return vscode.Disposable.from(
    item,
    journals.onDidChange(show),
    onDidChangeDay(show),
    vscode.window.onDidChangeActiveTextEditor(show),
  );
}
