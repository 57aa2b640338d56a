import * as vscode from 'vscode';
import type { IsoWeek } from '../../notation/time/iso-week';
import { reviewWeek } from '../../planning/week-review';
import { applyChanges } from '../apply-changes';
import type { FeatureContext } from '../feature-context';
import type { OpenJournal } from '../open-journal';
import { say } from '../sentences';
import { chooseJournal } from './choose-journal';
import { registerCommand } from './run-command';

/** The journal and week of the week note that is being read, when it is one. */
function weekInHand({
  journals,
}: FeatureContext): { readonly journal: OpenJournal; readonly week: IsoWeek } | undefined {
  const editor = vscode.window.activeTextEditor;
  const found = editor && journals.noteOf(editor.document);
  return found?.note.name.kind === 'week'
    ? { journal: found.journal, week: found.note.name.week }
    : undefined;
}

/**
 * Writes the facts of a week into its note, between the marked lines: of the week whose note is open, else of the week
 * that is just over. Opens the note. Pain and the private reasons are in it only where the settings ask for them.
 */
export function registerWeekReviewCommand(context: FeatureContext): vscode.Disposable {
  return registerCommand(context, 'writeWeekReview', async (id) => {
    await context.journals.ready;
    const inHand = id === undefined ? weekInHand(context) : undefined;
    const open = inHand?.journal ?? (await chooseJournal(context.journals, id));
    if (!open) return;
    const review = reviewWeek(open.journal, {
      today: open.today(),
      zone: open.zone(),
      acceptedChance: open.settings.recoveryChance,
      ...(inHand ? { week: inHand.week } : {}),
      day: open.settings.review.day,
      includePain: open.settings.review.pain,
      includeWhy: open.settings.review.why,
      say,
    });
    await applyChanges(open, review.changes);
    await vscode.window.showTextDocument(open.uriOf(review.note));
    if (review.notClosed) {
      void vscode.window.showWarningMessage(
        vscode.l10n.t(
          'Nothing was written: {0} has the line that begins the facts, and not the one that ends them.',
          review.note,
        ),
      );
      return;
    }
    vscode.window.setStatusBarMessage(
      review.changes.length === 0
        ? vscode.l10n.t('The facts of {0} stand in its note already.', review.week)
        : vscode.l10n.t('The facts of {0} are written.', review.week),
      4000,
    );
  });
}
