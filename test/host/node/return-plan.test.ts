import assert from 'node:assert/strict';
import * as vscode from 'vscode';
import { accept, endLists, leave } from '../end-lists';
import { eventually, findingIn, type ScratchJournal, scratchJournal } from '../scratch-journal';

// Today is Wednesday, 2026-02-25.

/** Runs the command and ends its lists in these ways. */
function run(...ways: readonly [string, ...string[]]): Promise<void> {
  return endLists(vscode.commands.executeCommand('trainingJournal.writeReturnPlan'), ways);
}

describe('getting going again', () => {
  let journal: ScratchJournal | undefined;
  let count = 0;

  /** Four weeks of two sessions; the last one four weeks ago, or yesterday. */
  async function opened(isBreak: boolean): Promise<ScratchJournal> {
    count += 1;
    const days = isBreak
      ? ['01-05', '01-08', '01-12', '01-15', '01-19', '01-22', '01-26', '01-29']
      : ['01-29', '02-02', '02-05', '02-09', '02-12', '02-16', '02-19', '02-24'];
    journal = await scratchJournal(`return-${count}`, {
      'journal.md': '#athlete "Dipper"\n#zone Europe/Lisbon\n',
      'zz.md': '- #rule flexibility gap:none\n',
      'goals.md':
        '- #goal low-split by:2026-06-14\n- #why mine\n- #metric gap from:14cm to:0cm\n- #need skill 2/week 60min 8/10\n',
      ...Object.fromEntries(days.map((day) => [`2026-${day}.md`, '- [x] #session skill 18:30 60min 8/10\n'])),
    });
    await findingIn(journal.uri('zz.md'), 'unreadable-field');
    await journal.show('journal.md');
    return journal;
  }

  const written = async ({ folder }: ScratchJournal) =>
    (await vscode.workspace.fs.readDirectory(folder))
      .map(([name]) => name)
      .filter((name) => name >= '2026-03')
      .sort();

  afterEach(async () => {
    await journal?.remove();
    journal = undefined;
  });

  it('writes the weeks of the return as notes, and one undo takes them back', async () => {
    const scratch = await opened(true);
    await run(accept);
    // Four weeks of seven notes: half of two sessions in the first week, and nothing hard in it.
    const names = (await written(scratch)).filter((name) => name.startsWith('2026-'));
    assert.equal(names.length, 28);
    const texts = await Promise.all(names.map((name) => scratch.read(name)));
    const skills = (from: number) =>
      texts.slice(from, from + 7).flatMap((text) => text.match(/#session skill .*/g) ?? []);
    assert.deepEqual(
      [0, 7, 14, 21].map((from) => skills(from).length),
      [1, 1, 1, 1],
    );
    assert.match(skills(0)[0] ?? '', / 60min 6\/10/);
    assert.match(skills(21)[0] ?? '', / 60min 8\/10/);
    await vscode.commands.executeCommand('undo');
    await eventually('folder without the notes', async () =>
      (await written(scratch)).some((name) => name.startsWith('2026-')) ? undefined : true,
    );
  });

  it('writes nothing when the preview is left', async () => {
    const scratch = await opened(true);
    const before = await written(scratch);
    await run(accept, leave);
    assert.deepEqual(await written(scratch), before);
  });

  it('writes nothing where there is nothing to come back from', async () => {
    const scratch = await opened(false);
    const before = await written(scratch);
    await run(accept);
    assert.deepEqual(await written(scratch), before);
  });
});
