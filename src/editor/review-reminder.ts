import * as vscode from 'vscode';
import { editorWords } from './editor-words';
import type { FeatureContext } from './feature-context';
import { journalsInFront } from './journals-in-front';
import { reviewStatus } from './review-status';
import { viewContext } from './views/view-context';

/** Whoever is typing is not kept waiting for it: it is looked for when the notes have been still for so long. */
const untilLookedFor = 500;

/** From the day of the look back on, a quiet word in the status bar; a click starts it. */
export function registerReviewReminder({ journals, onDidChangeDay }: FeatureContext): vscode.Disposable {
  const words = editorWords();
  const item = vscode.window.createStatusBarItem('trainingJournal.review', vscode.StatusBarAlignment.Left, 9);
  item.name = vscode.l10n.t('Look Back on the Week');
  const show = (): void => {
    const status = reviewStatus(journalsInFront(journals).map((open) => viewContext(open, words)));
    if (!status) {
      item.hide();
      return;
    }
    const { text, tooltip, accessibilityLabel, journal } = status;
    item.text = text;
    item.tooltip = tooltip;
    item.accessibilityInformation = { label: accessibilityLabel, role: 'button' };
    item.command = {
      command: 'trainingJournal.reviewWeek',
      title: vscode.l10n.t('Review the Week and Plan the Next'),
      ...(journal === undefined ? {} : { arguments: [journal] }),
    };
    item.show();
  };
  let timer: ReturnType<typeof setTimeout> | undefined;
  const showSoon = (): void => {
    clearTimeout(timer);
    timer = setTimeout(show, untilLookedFor);
  };
  show();
  return vscode.Disposable.from(
    item,
    journals.onDidChange(showSoon),
    onDidChangeDay(showSoon),
    vscode.window.onDidChangeActiveTextEditor(showSoon),
    { dispose: () => clearTimeout(timer) },
  );
}
