// The same first findings, asked for in both extension hosts.
import assert from 'node:assert/strict';
import * as vscode from 'vscode';

/** The code of a finding, as a word. */
function codeOf({ code }: vscode.Diagnostic): string {
  return String(typeof code === 'object' ? code.value : code);
}

/** Waits until the findings of a note are what is wished for, and returns them. */
function findingsOf(
  note: vscode.Uri,
  wished: (codes: readonly string[]) => boolean,
): Promise<readonly vscode.Diagnostic[]> {
  return new Promise((resolve) => {
    const look = () => {
      const found = vscode.languages.getDiagnostics(note);
      if (!wished(found.map(codeOf))) return;
      watching.dispose();
      resolve(found);
    };
    const watching = vscode.languages.onDidChangeDiagnostics(look);
    look();
  });
}

/** Describes what a journal with two flexibility sessions too close to each other shows in the editor. */
export function describeFindings(host: string): void {
  describe(`findings in ${host}`, () => {
    const folder = vscode.workspace.workspaceFolders?.[0]?.uri ?? vscode.Uri.file('/');
    const tuesday = vscode.Uri.joinPath(folder, '2026-02-24.md');
    const wednesday = vscode.Uri.joinPath(folder, '2026-02-25.md');

    before(async () => {
      const bytes = new TextEncoder();
      await vscode.workspace.fs.writeFile(
        tuesday,
        bytes.encode('# Tuesday\n\n- [x] #session flexibility 18:30 75min 8/10\n'),
      );
      await vscode.workspace.fs.writeFile(
        wednesday,
        bytes.encode('# Wednesday\n\n- [ ] #session flexibility 14:45 75min 8/10\n'),
      );
    });

    after(async () => {
      await vscode.commands.executeCommand('workbench.action.revertAndCloseActiveEditor');
      await vscode.workspace.fs.delete(tuesday);
      await vscode.workspace.fs.delete(wednesday);
    });

    it('stand at the later session, with the hours between them and the place of the earlier one', async () => {
      const found = await findingsOf(wednesday, (codes) => codes.includes('gap-too-short'));
      const gap = found.find((diagnostic) => codeOf(diagnostic) === 'gap-too-short');
      assert.ok(gap);
      assert.equal(gap.severity, vscode.DiagnosticSeverity.Warning);
      assert.equal(gap.range.start.line, 2);
      assert.match(gap.message, /\b19 h\b/);
      assert.match(gap.message, /\b48 h\b/);
      assert.deepEqual(
        gap.relatedInformation?.map(({ location }) => location.uri.toString()),
        [tuesday.toString()],
      );
    });

    it('go away while the session is written to another day, before it is saved', async () => {
      const document = await vscode.workspace.openTextDocument(wednesday);
      await vscode.window.showTextDocument(document);
      const edit = new vscode.WorkspaceEdit();
      edit.replace(wednesday, document.lineAt(2).range, '- [ ] #session recovery 14:45 75min 2/10');
      await vscode.workspace.applyEdit(edit);
      assert.equal(document.isDirty, true);
      await findingsOf(wednesday, (codes) => !codes.includes('gap-too-short'));
    });

    it('mark exactly the characters that cannot be read', async () => {
      const document = await vscode.workspace.openTextDocument(wednesday);
      const edit = new vscode.WorkspaceEdit();
      edit.replace(wednesday, document.lineAt(2).range, '- [ ] #session recovery 81:30 75min 2/10');
      await vscode.workspace.applyEdit(edit);
      const found = await findingsOf(wednesday, (codes) => codes.includes('unreadable-field'));
      const unreadable = found.filter((diagnostic) => codeOf(diagnostic) === 'unreadable-field');
      assert.deepEqual(
        unreadable.map(({ range }) => document.getText(range)),
        ['81:30'],
      );
    });
  });
}
