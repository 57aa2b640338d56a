import * as vscode from 'vscode';
import { type CommentToWrite, writeComment } from '../../../planning/coach/comment';
import { applyChanges } from '../../apply-changes';
import { editorWords } from '../../editor-words';
import type { FeatureContext } from '../../feature-context';
import type { OpenJournal } from '../../open-journal';
import { isRecord } from '../../page/read-message';
import { readCoachHeading } from '../../settings';
import { showWritten } from '../../show-written';
import { registerCommand } from '../run-command';
import { pickAthlete } from './pick-athlete';

function comment(journal: OpenJournal, words: string): CommentToWrite | undefined {
  return writeComment(journal.journal, journal.today(), { words, heading: readCoachHeading(journal.uri) });
}

/** Which note a comment goes into. */
function whereTo(journal: OpenJournal): string {
  const to = comment(journal, '…');
  const day = to && editorWords().dates.weekdayAndDay(to.date, journal.today());
  if (!to || day === undefined) return '';
  return to.isNew
    ? vscode.l10n.t('Enter writes it into a new note of {0}, Escape writes nothing.', day)
    : vscode.l10n.t('Enter writes it into the note of {0}, Escape writes nothing.', day);
}

/** The athlete, and words to begin with, as pages and keyboard shortcuts hand them over. */
function askedFor(value: unknown): { readonly journal?: string; readonly words: string } {
  if (!isRecord(value)) return { words: '' };
  const { journal, words } = value;
  return {
    ...(typeof journal === 'string' ? { journal } : {}),
    words: typeof words === 'string' ? words : '',
  };
}

/**
 * Writes a comment into the next note of an athlete, as a block quote under the coach's own heading; one step that one
 * undo takes back.
 */
export function registerCommentCommand(context: FeatureContext): vscode.Disposable {
  const { journals } = context;
  return registerCommand(context, 'writeComment', async (asked) => {
    await journals.ready;
    const { journal: id, words: begun } = askedFor(asked);
    const named = id === undefined ? undefined : journals.byId(id);
    const journal = named ?? (await pickAthlete(journals.all(), vscode.l10n.t('A comment for whom?')));
    if (!journal) return;
    const words = await vscode.window.showInputBox({
      title: vscode.l10n.t('Comment for {0}', journal.title),
      prompt: whereTo(journal),
      value: begun,
      ignoreFocusOut: true,
    });
    const written = words === undefined ? undefined : comment(journal, words);
    const [change] = written?.changes ?? [];
    if (!written || !change) return;
    await applyChanges(journal, written.changes);
    await showWritten(
      journal.uriOf(change.note),
      vscode.l10n.t('The comment stands in the note of {0}. Undo takes it back.', written.date),
    );
  });
}
