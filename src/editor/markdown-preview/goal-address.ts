import * as vscode from 'vscode';

const extensionId = 'training-journal.markdown-training-journal';
const path = '/goal';

/** An address that opens the page of a goal when it is followed outside a command, such as in the Markdown preview. */
export function goalAddress(journal: string, goal: string): vscode.Uri {
  const query = new URLSearchParams({ journal, goal }).toString();
  return vscode.Uri.from({ scheme: vscode.env.uriScheme, authority: extensionId, path, query });
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
