import assert from 'node:assert/strict';
import * as vscode from 'vscode';

describe('the extension in the editor', () => {
  const id = 'training-journal.markdown-training-journal';

  it('is there', () => {
    assert.ok(vscode.extensions.getExtension(id));
  });

  it('activates', async () => {
    const extension = vscode.extensions.getExtension(id);
    await extension?.activate();
    assert.equal(extension?.isActive, true);
  });

  it('registers every command that it contributes', async () => {
    const extension = vscode.extensions.getExtension(id);
    await extension?.activate();
    const contributed: readonly { readonly command: string }[] =
      extension?.packageJSON.contributes?.commands ?? [];
    assert.ok(contributed.length > 0);
    const registered = new Set(await vscode.commands.getCommands(true));
    assert.deepEqual(
      contributed.map(({ command }) => command).filter((command) => !registered.has(command)),
      [],
    );
  });
});
