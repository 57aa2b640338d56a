import assert from 'node:assert/strict';
import * as vscode from 'vscode';
import { applyChanges, IncompleteChangeError, StaleChangeError } from '../../../src/editor/apply-changes';
import { registerCommand } from '../../../src/editor/commands/run-command';
import type { FeatureContext } from '../../../src/editor/feature-context';
import { finishChanges, takeBackChanges } from '../../../src/editor/unfinished-changes';
import type { NoteChange } from '../../../src/planning/note-change';
import { FailingFileSystem } from '../failing-file-system';
import { eventually } from '../scratch-journal';

const day = '# Tuesday\n\n- [ ] #session skill 18:30\n\nWords of mine.\n';
const moved = '# Tuesday\n\n- [ ] #session skill 18:30 moved:2026-02-26\n\nWords of mine.\n';
const arrived = '# Thursday, 2026-02-26\n\n- [ ] #session skill 18:30\n';

const move: readonly NoteChange[] = [
  {
    kind: 'edit',
    note: '2026-02-24.md',
    before: day,
    edits: [{ range: { start: 37, end: 37 }, text: ' moved:2026-02-26' }],
  },
  { kind: 'create', note: '2026-02-26.md', text: arrived },
];

/** What a command that could not do all of it says. */
async function refused(changes: Promise<void>): Promise<IncompleteChangeError> {
  try {
    await changes;
  } catch (error) {
    if (error instanceof IncompleteChangeError) return error;
    throw error;
  }
  throw new Error('Everything was written.');
}

describe('changes of several notes of which one cannot be written', () => {
  let files: FailingFileSystem;
  let count = 0;
  const registered: vscode.Disposable[] = [];
  const context = { log: { error: (text: string) => assert.fail(text) } } as unknown as FeatureContext;
  const places = { uriOf: (note: string) => files.uri(note) };
  const shown = (note: string) =>
    vscode.workspace.textDocuments.find(({ uri }) => uri.toString() === files.uri(note).toString());

  beforeEach(() => {
    count += 1;
    files = new FailingFileSystem(`journal-with-faults-${count}`);
    registered.push(vscode.workspace.registerFileSystemProvider(files.scheme, files));
    files.put('2026-02-24.md', day);
  });

  afterEach(async () => {
    files.locked.clear();
    for (const document of vscode.workspace.textDocuments) if (document.isDirty) await document.save();
    await vscode.commands.executeCommand('workbench.action.closeAllEditors');
    await vscode.commands.executeCommand('notifications.clearAll');
    for (const one of registered.splice(0)) one.dispose();
  });

  it('are all made and saved when nothing stands in the way', async () => {
    await applyChanges(places, move);
    assert.equal(files.text('2026-02-24.md'), moved);
    assert.equal(files.text('2026-02-26.md'), arrived);
  });

  for (const [what, back] of [
    ['are finished', false],
    ['are taken back', true],
  ] as const)
    it(`say which note is missing, and ${what}`, async () => {
      files.locked.add('2026-02-26.md');
      const error = await refused(applyChanges(places, move));
      assert.deepEqual(
        error.outcome.missing.map(({ note }) => note).filter((note) => note === '2026-02-26.md'),
        ['2026-02-26.md'],
      );
      assert.match(error.message, /Missing: .*2026-02-26\.md/);
      assert.equal(files.text('2026-02-26.md'), undefined);
      files.locked.clear();
      if (back) {
        assert.deepEqual(await takeBackChanges(error), []);
        assert.equal(files.text('2026-02-24.md'), day);
        assert.equal(files.text('2026-02-26.md'), undefined);
      } else {
        await finishChanges(error);
        assert.equal(files.text('2026-02-24.md'), moved);
        assert.equal(files.text('2026-02-26.md'), arrived);
      }
    });

  it('say which note stands, and take it back, when the second of two new notes is missing', async () => {
    const two: readonly NoteChange[] = [
      { kind: 'create', note: '2026-02-26.md', text: arrived },
      { kind: 'create', note: '2026-02-27.md', text: '# Friday, 2026-02-27\n' },
    ];
    files.locked.add('2026-02-27.md');
    const error = await refused(applyChanges(places, two));
    assert.deepEqual(error.outcome, { made: two.slice(0, 1), missing: two.slice(1), other: [] });
    assert.match(
      error.message,
      /^Not everything was written\. Written: .*2026-02-26\.md\. Missing: .*2026-02-27\.md\.$/,
    );
    assert.deepEqual(await takeBackChanges(error), []);
    assert.deepEqual([files.text('2026-02-26.md'), files.text('2026-02-27.md')], [undefined, undefined]);
  });

  it('leave a note alone in which someone has written since, on the way back', async () => {
    const two: readonly NoteChange[] = [
      { kind: 'create', note: '2026-02-26.md', text: arrived },
      { kind: 'create', note: '2026-02-27.md', text: '# Friday, 2026-02-27\n' },
    ];
    files.locked.add('2026-02-27.md');
    const error = await refused(applyChanges(places, two));
    files.put('2026-02-26.md', `${arrived}My words.\n`);
    assert.deepEqual(await takeBackChanges(error), ['2026-02-26.md']);
    assert.equal(files.text('2026-02-26.md'), `${arrived}My words.\n`);
  });

  it('say which note is changed in the editor and not saved, and save it when it can be', async () => {
    files.locked.add('2026-02-24.md');
    const error = await refused(applyChanges(places, move.slice(0, 1)));
    assert.deepEqual(error.unsaved, ['2026-02-24.md']);
    assert.match(error.message, /Changed in the editor, and not saved: .*2026-02-24\.md/);
    assert.equal(shown('2026-02-24.md')?.getText(), moved);
    assert.equal(files.text('2026-02-24.md'), day);
    files.locked.clear();
    await finishChanges(error);
    assert.equal(files.text('2026-02-24.md'), moved);
  });

  it('offer both in a notice: its first button writes the rest', async () => {
    files.locked.add('2026-02-26.md');
    registered.push(registerCommand(context, 'moveAmongFaults', () => applyChanges(places, move)));
    await vscode.commands.executeCommand('trainingJournal.moveAmongFaults');
    files.locked.clear();
    await eventually('everything', async () => {
      await vscode.commands.executeCommand('notification.acceptPrimaryAction');
      return files.text('2026-02-26.md') === arrived && files.text('2026-02-24.md') === moved
        ? true
        : undefined;
    });
  });

  it('do not overwrite a note that was changed on the disk a moment ago', async () => {
    await vscode.workspace.openTextDocument(files.uri('2026-02-24.md'));
    files.put('2026-02-24.md', `${day}Words of another program.\n`);
    await assert.rejects(applyChanges(places, move), StaleChangeError);
    assert.equal(files.text('2026-02-24.md'), `${day}Words of another program.\n`);
    assert.equal(files.text('2026-02-26.md'), undefined);
    assert.equal(shown('2026-02-24.md')?.isDirty, false);
  });

  it('do not bring back a note that was removed a moment ago', async () => {
    await vscode.workspace.openTextDocument(files.uri('2026-02-24.md'));
    files.delete(files.uri('2026-02-24.md'));
    await assert.rejects(applyChanges(places, move), StaleChangeError);
    assert.equal(files.text('2026-02-24.md'), undefined);
    assert.equal(files.text('2026-02-26.md'), undefined);
  });

  it('are planned again, for the notes as they are, by the button of the notice that says so', async () => {
    const argumentsGiven: unknown[] = [];
    registered.push(
      registerCommand(context, 'moveAgainAmongFaults', async (handed) => {
        argumentsGiven.push(handed);
        if (argumentsGiven.length === 1) throw new StaleChangeError(files.uri('2026-02-24.md'));
      }),
    );
    await vscode.commands.executeCommand('trainingJournal.moveAgainAmongFaults', 'what was handed over');
    await eventually('a second time', async () => {
      await vscode.commands.executeCommand('notification.acceptPrimaryAction');
      return argumentsGiven.length > 1 ? true : undefined;
    });
    assert.deepEqual(argumentsGiven, ['what was handed over', 'what was handed over']);
  });
});
