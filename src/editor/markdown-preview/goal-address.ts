import * as vscode from 'vscode';
import { rangeInNote } from '../document-ranges';
import type { OpenJournal } from '../open-journal';

const extensionId = 'training-journal.markdown-training-journal';
const path = '/goal';

/** Schemes of which the editor's Markdown preview lets a link out to an extension. */
const schemesOfPreview: readonly string[] = ['vscode', 'vscode-insiders'];

/** How one gets from a document to another beside it: `../goals.md`. */
function relativePath(from: vscode.Uri, to: vscode.Uri): string {
  const [own, other] = [from.path.split('/').slice(0, -1), to.path.split('/')];
  let shared = 0;
  while (shared < own.length && own[shared] === other[shared]) shared += 1;
  return [...own.slice(shared).map(() => '..'), ...other.slice(shared).map(encodeURIComponent)].join('/');
}

/**
 * Where a goal's name leads to in the Markdown preview: to its page, or to its line where the preview of this editor
 * lets no link out to an extension.
 * @param from the document that is drawn
 * @returns `undefined` when there is no such goal
 */
export function goalAddress(journal: OpenJournal, goal: string, from: vscode.Uri): string | undefined {
  const found = journal.journal.plan.goals.get(goal);
  const note = found && journal.journal.note(found.note);
  if (!note) return undefined;
  if (!schemesOfPreview.includes(vscode.env.uriScheme)) {
    const line = rangeInNote(note, found.entry.range).start.line + 1;
    return `${relativePath(from, journal.uriOf(note.path))}#L${line}`;
  }
  const query = new URLSearchParams({ journal: journal.id, goal }).toString();
  const scheme = vscode.env.uriScheme;
  return vscode.Uri.from({ scheme, authority: extensionId, path, query }).toString();
}

/** Opens what a {@link goalAddress} names; an address that names nothing of an open journal does nothing. */
export function registerGoalAddresses(): vscode.Disposable {
  return vscode.window.registerUriHandler({
    async handleUri(uri) {
      if (uri.path !== path) return;
      const query = new URLSearchParams(uri.query);
      const [journal, goal] = [query.get('journal'), query.get('goal')];
      if (journal !== null && goal !== null)
        await vscode.commands.executeCommand('trainingJournal.openGoalPage', { journal, goal });
    },
  });
}
