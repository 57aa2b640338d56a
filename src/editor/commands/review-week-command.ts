import * as vscode from 'vscode';
import type { FeatureContext } from '../feature-context';
import { reviewAndWrite } from '../review-flow/review-and-write';
import { showWritten } from '../show-written';
import { chooseJournal } from './choose-journal';
import { registerCommand } from './run-command';

/**
 * The look back on a week in at most three steps: what happened, what could be done otherwise, the next week. One
 * confirmation writes all of it.
 */
export function registerReviewWeekCommand(context: FeatureContext): vscode.Disposable {
  return registerCommand(context, 'reviewWeek', async (id) => {
    const { journals } = context;
    const journal = await chooseJournal(journals, id);
    if (!journal) return;
    const written = await reviewAndWrite(journals, journal);
    if (!written) return;
    const { changes, flow } = written;
    const shown = changes.find(({ note }) => note === flow.review.note) ?? changes[0];
    if (!shown) return;
    await showWritten(
      journal.uriOf(shown.note),
      vscode.l10n.t('{0} notes written. Undo takes them back in one step.', changes.length),
    );
  });
}
