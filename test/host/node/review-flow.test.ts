import assert from 'node:assert/strict';
import * as vscode from 'vscode';
import type { OpenJournal } from '../../../src/editor/open-journal';
import { reviewAndWrite } from '../../../src/editor/review-flow/review-and-write';
import type { ReviewItem } from '../../../src/editor/review-flow/review-picker';
import { WorkspaceJournals } from '../../../src/editor/workspace-journals';
import { DiskNoteSource } from '../../../src/journal/sources/disk-note-source';
import { eventually, type ScratchJournal, scratchJournal } from '../scratch-journal';
import { StandInList } from '../stand-in-list';

// Today is Wednesday, 2026-02-25: the eighth week is looked back on, and the rest of the ninth is planned.

describe('the review of a week in one flow', () => {
  const notes = {
    'journal.md': '#athlete "Dipper"\n#zone Europe/Lisbon\n- #rule recovery min:0/week\n',
    'goals.md':
      '# Goals\n\n- #goal low-split by:2026-06-14\n- #why mine\n- #metric gap from:14cm to:0cm\n- #need flexibility 1/week 60min 7/10\n',
    'hours.md': '- #free thursday friday 18:00-20:00\n',
    '2026-02-16.md': '- [x] #session flexibility 18:00 60min 7/10 for:low-split\n',
  };
  let scratch: ScratchJournal;
  let journals: WorkspaceJournals;
  let log: vscode.LogOutputChannel;
  let journal: OpenJournal;
  let lists: StandInList<ReviewItem>[];
  let count = 0;

  beforeEach(async () => {
    count += 1;
    lists = [];
    scratch = await scratchJournal(`flow-${count}`, notes);
    log = vscode.window.createOutputChannel('Tests of the review', { log: true });
    journals = new WorkspaceJournals((folder) => new DiskNoteSource(folder.uri.fsPath), log);
    await journals.ready;
    journal = await eventually('journal', () => journals.byId(scratch.folder.toString()));
  });

  afterEach(async () => {
    journals.dispose();
    log.dispose();
    await vscode.commands.executeCommand('notifications.clearAll');
    await scratch.remove();
  });

  const start = () =>
    reviewAndWrite(journals, journal, () => {
      const list = new StandInList<ReviewItem>();
      lists.push(list);
      return list;
    });

  /** The list that stands open, once it shows the step and nothing is worked out any more. */
  const step = (title: RegExp, number = 1) =>
    eventually(`step ${title}`, () => {
      const list = lists[number - 1];
      return list?.isOpen && !list.busy && title.test(list.title ?? '') && list.activeItems.length > 0
        ? list
        : undefined;
    });

  /** Every file of the journal, with its text. */
  async function folder(): Promise<Readonly<Record<string, string>>> {
    const names = (await vscode.workspace.fs.readDirectory(scratch.folder)).map(([name]) => name).sort();
    return Object.fromEntries(
      await Promise.all(names.map(async (name) => [name, await scratch.read(name)] as const)),
    );
  }

  it('writes facts, a taken proposal and the week with one confirmation, and one undo takes all of it back', async () => {
    const before = await folder();
    const review = start();
    const list = await step(/^1 of 3: what happened/);
    assert.equal(list.buttons.length, 0);
    assert.ok(list.under('Kept').includes('$(circle-small-filled) Kept: 1 of 1 sessions, 60 min'));
    list.accept();
    await step(/^2 of 3: what could be done otherwise/);
    list.accept('Measure low-split');
    assert.match(list.activeItems[0]?.label ?? '', /pass-filled\) Measure low-split/);
    list.accept('Next');
    await step(/^3 of 3: .*1 session placed/);
    assert.match(list.activeItems[0]?.label ?? '', /Write the facts of 2026-W08, 1 session, 1 proposal$/);
    assert.deepEqual(await folder(), before);
    list.accept();
    const confirmed = await review;
    assert.ok(confirmed);
    const after = await folder();
    assert.match(after['2026-W08.md'] ?? '', /^- Kept: 1 of 1 sessions, 60 min$/m);
    assert.match(
      after['2026-02-26.md'] ?? '',
      /#session flexibility 18:00 60min 7\/10.*\n- \[ \] Measure low-split gap\n/,
    );
    assert.equal(after['goals.md'], before['goals.md']);
    await vscode.window.showTextDocument(scratch.uri('2026-W08.md'));
    await vscode.commands.executeCommand('undo');
    await eventually('folder as it was', async () =>
      JSON.stringify(await folder()) === JSON.stringify(before) ? true : undefined,
    );
  });

  for (const steps of [0, 1, 2]) {
    it(`writes nothing when it is left in step ${steps + 1}`, async () => {
      const before = await folder();
      const review = start();
      const list = await step(/^1 of 3/);
      if (steps > 0) {
        list.accept();
        await step(/^2 of 3/);
        list.accept('Measure low-split');
      }
      if (steps > 1) {
        list.accept('Next');
        await step(/^3 of 3: .*placed/);
      }
      list.escape();
      assert.equal(await review, undefined);
      assert.deepEqual(await folder(), before);
      assert.equal(list.isOpen, false);
    });
  }

  it('goes back with the button, and knows what was taken', async () => {
    const review = start();
    const list = await step(/^1 of 3/);
    list.accept();
    await step(/^2 of 3/);
    list.accept('Measure low-split');
    list.pressButton();
    await step(/^1 of 3/);
    list.accept();
    await step(/^2 of 3/);
    assert.ok(list.items.some(({ label }) => label.startsWith('$(pass-filled) Measure low-split')));
    list.escape();
    await review;
  });

  it('writes what is ticked of the week alone', async () => {
    const review = start();
    const list = await step(/^1 of 3/);
    list.accept();
    await step(/^2 of 3/);
    list.accept('Next');
    await step(/^3 of 3: .*placed/);
    list.accept('18:00: flexibility');
    list.accept('Rest days');
    list.accept('Write the facts');
    await review;
    assert.deepEqual(Object.keys(await folder()).sort(), [...Object.keys(notes), '2026-W08.md'].sort());
  });

  it('begins anew when a note changes, without the proposal that has become needless', async () => {
    const review = start();
    const list = await step(/^1 of 3/);
    list.accept();
    await step(/^2 of 3/);
    await scratch.write('2026-02-24.md', '- #measure low-split gap 12cm warm\n');
    await step(/^1 of 2/);
    assert.match(list.placeholder ?? '', /changed/);
    list.escape();
    await review;
  });

  it('writes over no word that came meanwhile: it shows the review anew, where the person was', async () => {
    const review = start();
    const list = await step(/^1 of 3/);
    list.accept();
    await step(/^2 of 3/);
    list.accept('Measure low-split');
    list.accept('Next');
    await step(/^3 of 3: .*placed/);
    const mine = '# The eighth week\n\nWords of mine.\n';
    await scratch.write('2026-W08.md', mine);
    // At once, before anything has told of the note.
    list.accept();
    const again = await step(/^3 of 3: .*placed/, 2);
    assert.equal(await scratch.read('2026-W08.md'), mine);
    assert.equal(await scratch.exists('2026-02-26.md'), false);
    const fresh = await eventually('plan for the note as it is', async () => {
      const row = again.items.find(({ label }) => label.includes('Write the facts'));
      return row?.row?.action.does === 'write' &&
        row.row.action.changes.some((one) => one.kind === 'edit' && one.before === mine)
        ? row
        : undefined;
    });
    assert.match(fresh.label, /1 proposal$/);
    again.accept('Write the facts');
    await review;
    assert.ok((await scratch.read('2026-W08.md')).startsWith(mine));
  });
});
