import assert from 'node:assert/strict';
import * as vscode from 'vscode';
import { accept, endLists, leave } from '../end-lists';
import {
  eventually,
  findingIn,
  type ScratchJournal,
  scratchJournal,
  workspaceRoot,
} from '../scratch-journal';

// Today is Wednesday, 2026-02-25.

/** A list is taken for filled after this time: nothing tells of it. */
const untilFilled = 700;

/** Runs a command and answers its questions in these ways. */
function run(command: string, argument: unknown, ...ways: readonly [string, ...string[]]): Promise<void> {
  return endLists(vscode.commands.executeCommand(`trainingJournal.${command}`, argument), ways, untilFilled);
}

describe('what a coach does in journals', () => {
  let roster: ScratchJournal | undefined;
  let count = 0;

  /** Three athletes below one folder. */
  async function opened(): Promise<ScratchJournal> {
    count += 1;
    roster = await scratchJournal(`coach-${count}`, {
      'dunlin/journal.md': '#athlete "Dunlin"\n#zone Europe/Lisbon\n- #rule flexibility gap:none\n',
      'dunlin/2026-02-27.md': '- [ ] #session skill 18:30 45min\n',
      'egret/journal.md':
        '#athlete "Egret"\n#zone Europe/Lisbon\n\n- #routine trunk strength 40min\n  - plank\n- #rule flexibility gap:none\n',
      'egret/2026-02-23.md': '- [x] #session strength 18:30 40min 6/10 routine:trunk\n',
      'egret/2026-02-24.md': '- [x] #session flexibility 18:30 60min 7/10\n',
      'godwit/journal.md': '#athlete "Godwit"\n#zone Europe/Lisbon\n- #rule flexibility gap:none\n',
    });
    for (const one of ['dunlin', 'egret', 'godwit'])
      await findingIn(roster.uri(`${one}/journal.md`), 'unreadable-field');
    return roster;
  }

  const egretToDunlin = (scratch: ScratchJournal) => ({
    from: idOf(scratch, 'egret'),
    into: idOf(scratch, 'dunlin'),
  });

  const idOf = (scratch: ScratchJournal, name: string) => scratch.uri(name).toString();
  const names = async (scratch: ScratchJournal, folder: string) =>
    (await vscode.workspace.fs.readDirectory(scratch.uri(folder))).map(([name]) => name).sort();

  afterEach(async () => {
    await roster?.remove();
    roster = undefined;
  });

  it('shows the page of all athletes', async () => {
    await opened();
    await vscode.commands.executeCommand('trainingJournal.openRoster');
    const page = await eventually('page of the athletes', () =>
      vscode.window.tabGroups.all
        .flatMap(({ tabs }) => tabs)
        .find(
          ({ input }) => input instanceof vscode.TabInputWebview && input.viewType.includes('rosterPage'),
        ),
    );
    assert.equal(page.label, 'Athletes');
    await vscode.commands.executeCommand('trainingJournal.openRoster');
    const tabs = vscode.window.tabGroups.all.flatMap((group) => group.tabs);
    assert.equal(
      tabs.filter(({ label }) => label === 'Athletes').length,
      1,
      'one page, however often it is opened',
    );
    await vscode.window.tabGroups.close(page);
  });

  it('writes a comment into the next note, and one undo takes it back', async () => {
    const scratch = await opened();
    const before = await scratch.read('dunlin/2026-02-27.md');
    await vscode.workspace
      .getConfiguration('trainingJournal', scratch.uri('dunlin'))
      .update('coach.heading', 'Words for you', vscode.ConfigurationTarget.Workspace);
    try {
      const asked = { journal: idOf(scratch, 'dunlin'), words: 'Slow in.' };
      await run('writeComment', asked, accept);
      assert.equal(await scratch.read('dunlin/2026-02-27.md'), `${before}\n## Words for you\n\n> Slow in.\n`);
      await vscode.commands.executeCommand('undo');
      const document = vscode.window.activeTextEditor?.document;
      await eventually('note as before', () => (document?.getText() === before ? true : undefined));
    } finally {
      await vscode.workspace
        .getConfiguration('trainingJournal', scratch.uri('dunlin'))
        .update('coach.heading', undefined, vscode.ConfigurationTarget.Workspace);
    }
  });

  it('writes no comment when the box is left', async () => {
    const scratch = await opened();
    const before = await scratch.read('dunlin/2026-02-27.md');
    await run('writeComment', { journal: idOf(scratch, 'dunlin'), words: 'Slow in.' }, leave);
    assert.equal(await scratch.read('dunlin/2026-02-27.md'), before);
  });

  it('adds a routine to the journals of others, and one undo takes it out of all of them', async () => {
    const scratch = await opened();
    // The journal of the workspace itself is one of them.
    const others = [
      vscode.Uri.joinPath(workspaceRoot(), 'journal.md'),
      ...['dunlin', 'godwit'].map((one) => scratch.uri(`${one}/journal.md`)),
    ];
    const read = async () =>
      Promise.all(
        others.map(async (uri) => new TextDecoder().decode(await vscode.workspace.fs.readFile(uri))),
      );
    const before = await read();
    await run('addToJournals', undefined, accept);
    for (const text of await read()) assert.match(text, /- #routine trunk strength 40min\n {2}- plank/);
    assert.equal((await scratch.read('egret/journal.md')).match(/#routine/g)?.length, 1);
    await vscode.commands.executeCommand('undo');
    await eventually('journals as before', async () => {
      const documents = await Promise.all(others.map((uri) => vscode.workspace.openTextDocument(uri)));
      return documents.every((one) => !/#routine/.test(one.getText())) || undefined;
    });
    for (const uri of others) await (await vscode.workspace.openTextDocument(uri)).save();
    assert.deepEqual(await read(), before);
  });

  it('adds nothing when the preview is left', async () => {
    const scratch = await opened();
    const before = await scratch.read('godwit/journal.md');
    await run('addToJournals', undefined, accept, leave);
    assert.equal(await scratch.read('godwit/journal.md'), before);
  });

  it('copies a week to another athlete, and one undo takes it back', async () => {
    const scratch = await opened();
    // This week, into next week, all of it.
    await run('copyWeeks', egretToDunlin(scratch), accept);
    const added = (await names(scratch, 'dunlin')).filter(
      (name) => name >= '2026-03' && name.startsWith('2026'),
    );
    assert.equal(added.length, 2);
    const texts = (await Promise.all(added.map((name) => scratch.read(`dunlin/${name}`)))).join('');
    assert.match(texts, /- \[ \] #session flexibility \d\d:\d\d 60min 7\/10\n/);
    assert.match(texts, /- \[ \] #session strength \d\d:\d\d 40min 6\/10 routine:trunk\n {2}- plank\n/);
    await vscode.commands.executeCommand('undo');
    await eventually('folder without the notes', async () =>
      (await names(scratch, 'dunlin')).some((name) => name >= '2026-03' && name.startsWith('2026'))
        ? undefined
        : true,
    );
  });

  it('copies nothing when the preview is left', async () => {
    const scratch = await opened();
    const before = await names(scratch, 'dunlin');
    await run('copyWeeks', egretToDunlin(scratch), accept, accept, leave);
    assert.deepEqual(await names(scratch, 'dunlin'), before);
    assert.doesNotMatch(await scratch.read('dunlin/journal.md'), /#routine/);
  });

  it('writes over nothing that was written while the preview was shown', async () => {
    const scratch = await opened();
    const running = vscode.commands.executeCommand('trainingJournal.addToJournals');
    await new Promise((resolve) => setTimeout(resolve, untilFilled));
    await vscode.commands.executeCommand(accept);
    await new Promise((resolve) => setTimeout(resolve, untilFilled));
    await scratch.write('godwit/journal.md', '#athlete "Godwit"\nwritten meanwhile\n');
    await vscode.commands.executeCommand(accept);
    await running;
    assert.equal(await scratch.read('godwit/journal.md'), '#athlete "Godwit"\nwritten meanwhile\n');
    assert.doesNotMatch(await scratch.read('dunlin/journal.md'), /#routine/);
  });
});
