import assert from 'node:assert/strict';
import * as vscode from 'vscode';
import { accept, endLists, leave } from '../end-lists';
import { eventually, findingIn, type ScratchJournal, scratchJournal } from '../scratch-journal';

// Today is Wednesday, 2026-02-25.

/** Runs a command and ends its lists in these ways. */
function run(name: string, ...ways: readonly [string, ...string[]]): Promise<void> {
  return endLists(vscode.commands.executeCommand(`trainingJournal.${name}`), ways);
}

const table = (cell: string) => `# Spring

#block

| week     | skill | notes |
| -------- | ----- | ----- |
| 2026-W10 | ${cell} | building |
| 2026-W11 | 2 x 60min | building |

My own words.
`;

const day = (date: string, length: string) =>
  `# ${date}\n\n- [ ] #session skill 18:30 ${length} 5/10\n\nMy own words.\n`;

describe('a block of weeks', () => {
  let journal: ScratchJournal | undefined;
  let count = 0;

  async function opened(more: Readonly<Record<string, string>> = {}): Promise<ScratchJournal> {
    count += 1;
    const days = ['02-02', '02-05', '02-09', '02-12', '02-16', '02-19'];
    journal = await scratchJournal(`block-${count}`, {
      'journal.md': '#athlete "Dipper"\n#zone Europe/Lisbon\n',
      'zz.md': '- #rule flexibility gap:none\n',
      'needs.md':
        '- #need skill 2/week 60min 5/10\n- #rule recovery min:0/week\n- #free mon thu 18:30-20:30\n',
      ...Object.fromEntries(days.map((one) => [`2026-${one}.md`, '- [x] #session skill 18:30 60min 5/10\n'])),
      ...more,
    });
    await findingIn(journal.uri('zz.md'), 'unreadable-field');
    await journal.show('journal.md');
    return journal;
  }

  const names = async ({ folder }: ScratchJournal) =>
    (await vscode.workspace.fs.readDirectory(folder)).map(([name]) => name).sort();

  afterEach(async () => {
    await journal?.remove();
    journal = undefined;
  });

  it('is written as one note, and one undo takes it back', async () => {
    const scratch = await opened();
    const before = await names(scratch);
    await run('writeBlock', accept);
    const [note = '', ...others] = (await names(scratch)).filter((name) => !before.includes(name));
    assert.deepEqual(others, []);
    assert.equal(note, 'block 2026-W10 to 2026-W21.md');
    assert.match(await scratch.read(note), /^#block\n\n\| week {5}\| skill {5}\| notes \|\n/m);
    await vscode.commands.executeCommand('undo');
    await eventually('folder without the note', async () =>
      (await names(scratch)).includes(note) ? undefined : true,
    );
  });

  it('is not written when the preview is left', async () => {
    const scratch = await opened();
    const before = await names(scratch);
    await run('writeBlock', accept, accept, leave);
    assert.deepEqual(await names(scratch), before);
  });

  it('follows its table when a cell is changed: one step, the words around it stay, and then nothing more', async () => {
    const scratch = await opened({
      'block.md': table('2 x 45min'),
      ...Object.fromEntries(
        ['03-02', '03-05', '03-09', '03-12'].map((one) => [`2026-${one}.md`, day(one, '60min')]),
      ),
    });
    // A note that another program has just written may still be read.
    await eventually('note as the table says', async () => {
      await run('planBlockAgain', accept);
      return (await scratch.read('2026-03-02.md')) === day('03-02', '45min') ? true : undefined;
    });
    assert.equal(await scratch.read('2026-03-05.md'), day('03-05', '45min'));
    assert.equal(await scratch.read('2026-03-09.md'), day('03-09', '60min'));
    const before = await names(scratch);
    await run('planBlockAgain', accept);
    assert.deepEqual(await names(scratch), before);
    assert.equal(await scratch.read('2026-03-02.md'), day('03-02', '45min'));
    await scratch.show('2026-03-02.md');
    await vscode.commands.executeCommand('undo');
    for (const one of ['03-02', '03-05'])
      await eventually(`the note of ${one} as it was`, async () => {
        const document = await vscode.workspace.openTextDocument(scratch.uri(`2026-${one}.md`));
        return document.getText() === day(one, '60min') ? true : undefined;
      });
    assert.equal(await scratch.read('block.md'), table('2 x 45min'));
  });

  it('tells of a cell that cannot be read, on exactly its characters', async () => {
    const scratch = await opened({ 'block.md': table('a bit more') });
    const { range } = await findingIn(scratch.uri('block.md'), 'unreadable-field');
    const document = await vscode.workspace.openTextDocument(scratch.uri('block.md'));
    assert.equal(document.getText(range), 'a bit more');
  });
});
