import assert from 'node:assert/strict';
import * as vscode from 'vscode';

describe('the extension in the browser', () => {
  const id = 'training-journal.markdown-training-journal';

  it('runs in a worker, where there is no Node', () => {
    assert.equal(vscode.env.uiKind, vscode.UIKind.Web);
    assert.equal('importScripts' in globalThis, true);
  });

  it('activates', async () => {
    const extension = vscode.extensions.getExtension(id);
    assert.ok(extension);
    await extension.activate();
    assert.equal(extension.isActive, true);
  });
});
