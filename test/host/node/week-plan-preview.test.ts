import assert from 'node:assert/strict';
import * as vscode from 'vscode';
import type { OpenJournal } from '../../../src/editor/open-journal';
import { type AskedPlan, planAndWrite } from '../../../src/editor/plan-preview/plan-and-write';
import { planInSlices } from '../../../src/editor/plan-preview/plan-in-slices';
import { planOptions } from '../../../src/editor/plan-preview/plan-options';
import type { RowItem } from '../../../src/editor/plan-preview/plan-picker';
import { WorkspaceJournals } from '../../../src/editor/workspace-journals';
import { DiskNoteSource } from '../../../src/journal/sources/disk-note-source';
import { parseIsoWeek } from '../../../src/notation/time/iso-week';
import { accept, endLists } from '../end-lists';
import { eventually, findingIn, type ScratchJournal, scratchJournal } from '../scratch-journal';
import { StandInList } from '../stand-in-list';

// Today is Wednesday, 2026-02-25.

describe('the preview of a plan', () => {
  const noRecovery = '- #rule recovery min:0/week\n';
  const week = ['02', '03', '04', '05', '06', '07', '08'].map((day) => `2026-03-${day}.md`);
  const needs =
    '- #goal low-split by:2026-06-14\n- #why mine\n- #metric gap from:14cm to:0cm\n- #need flexibility 2/week 60min 8/10 gap:72h\n- #need skill 1/week 45min 5/10\n';
  let scratch: ScratchJournal;
  let journals: WorkspaceJournals;
  let log: vscode.LogOutputChannel;
  let journal: OpenJournal;
  let lists: StandInList<RowItem>[];
  let count = 0;

  async function opened(notes: Readonly<Record<string, string>>): Promise<void> {
    count += 1;
    lists = [];
    scratch = await scratchJournal(`preview-${count}`, {
      'journal.md': '#athlete "Dipper"\n#zone Europe/Lisbon\n',
      'goals.md': needs,
      ...notes,
    });
    log = vscode.window.createOutputChannel('Tests of the preview', { log: true });
    journals = new WorkspaceJournals((folder) => new DiskNoteSource(folder.uri.fsPath), log);
    await journals.ready;
    journal = await eventually('journal', () => journals.byId(scratch.folder.toString()));
  }

  afterEach(async () => {
    journals.dispose();
    log.dispose();
    await vscode.commands.executeCommand('notifications.clearAll');
    await scratch.remove();
  });

  /** Starts it; the lists that it opens come one after the other into `lists`. */
  function start(mode: 'new' | 'rearrange' = 'new', again: AskedPlan['again'] = () => undefined) {
    const planned = parseIsoWeek(mode === 'new' ? '2026-W10' : '2026-W09');
    assert.ok(planned);
    return planAndWrite(
      { journals },
      journal,
      {
        optionsOf: (open) => planOptions(open, [planned], mode),
        nothingToDo: () => 'nothing',
        again,
      },
      () => {
        const list = new StandInList<RowItem>();
        lists.push(list);
        return list;
      },
    );
  }

  /** The list that stands open, filled, when it is the `number`th one. */
  const list = (number = 1) =>
    eventually(`list ${number}`, () =>
      lists.length === number && lists[number - 1]?.isOpen ? lists[number - 1] : undefined,
    );

  const exist = async () =>
    (await Promise.all(week.map((path) => scratch.exists(path)))).filter(Boolean).length;

  const roomy = { 'hours.md': `${noRecovery}- #free mon wed thu fri 18:00-20:00\n` };
  const tight = { 'hours.md': `${noRecovery}- #free mon wed 18:00-20:00\n` };

  it('writes all with Enter, and nothing with Escape', async () => {
    await opened(roomy);
    const left = start();
    (await list()).escape();
    assert.equal(await left, undefined);
    assert.equal(await exist(), 0);
    const written = start();
    (await list(2)).accept();
    assert.equal((await written)?.length, 7);
    assert.equal(await exist(), 7);
  });

  it('writes the ticked sessions alone', async () => {
    await opened(roomy);
    const written = start();
    const shown = await list();
    assert.match(shown.under('Sessions').join('\n'), /pass-filled\) Mon, Mar 2 18:00: flexibility/);
    shown.accept('Mon, Mar 2');
    assert.match(shown.under('Sessions')[0] ?? '', /circle-large-outline\) Mon, Mar 2/);
    assert.match(shown.activeItems[0]?.label ?? '', /Mon, Mar 2/);
    shown.accept('Rest days');
    shown.accept('Write');
    await written;
    assert.equal(await scratch.exists('2026-03-02.md'), false);
    const others = await Promise.all(week.map((path) => scratch.read(path).catch(() => '')));
    assert.equal(others.join('').match(/#session/g)?.length, 2);
    assert.doesNotMatch(others.join(''), /Rest day/);
  });

  it('says in one sentence why not everything fits; a limit is changed, and the new plan is shown', async () => {
    await opened(tight);
    const written = start();
    const shown = await list();
    assert.match(
      `${shown.items[0]?.label} ${shown.items[0]?.detail}`,
      /^\$\(warning\) 2 flexibility sessions for low-split 72 h apart and no other free hours .*fit into one week\.$/,
    );
    assert.match(shown.title ?? '', /1 left out/);
    assert.deepEqual(shown.under('Left out'), ['$(circle-slash) flexibility for low-split']);
    shown.accept('$(edit) Make it 48 h in place of 72 h');
    const again = await list(2);
    assert.match(again.title ?? '', /nothing left out/);
    assert.match(await scratch.read('goals.md'), /8\/10 gap:48h\n/);
    again.accept();
    assert.equal((await written)?.length, 7);
    const texts = await Promise.all(week.map((path) => scratch.read(path)));
    assert.equal(texts.join('').match(/#session flexibility/g)?.length, 2);
  });

  it('explains a week in which nothing can be placed, and opens the line that stands in the way', async () => {
    await opened({ 'hours.md': `${noRecovery}- #busy 2026-03-02..2026-03-08\n` });
    const written = start();
    const shown = await list();
    assert.match(
      `${shown.items[0]?.label} ${shown.items[0]?.detail}`,
      /the busy days 2026-03-02 to 2026-03-08/,
    );
    assert.equal(
      shown.items.some(({ label }) => label.includes('Write')),
      false,
    );
    shown.accept('#busy');
    assert.equal(await written, undefined);
    const editor = vscode.window.activeTextEditor;
    assert.equal(editor?.document.uri.toString(), scratch.uri('hours.md').toString());
    assert.equal(editor?.document.getText(editor.selection), '#busy 2026-03-02..2026-03-08');
    assert.equal(await exist(), 0);
  });

  it('opens the line that asks for a session with the button of its row', async () => {
    await opened(roomy);
    const written = start();
    (await list()).openLineOf('skill');
    assert.equal(await written, undefined);
    const editor = vscode.window.activeTextEditor;
    assert.equal(editor?.document.getText(editor.selection), '#need skill 1/week 45min 5/10');
  });

  it('plans again by itself when a note changes, and writes into the note as it is then', async () => {
    await opened(roomy);
    const written = start();
    const shown = await list();
    const before = shown.under('Sessions').length;
    const mine = '# Monday\n\n- [ ] #session flexibility 18:00 60min 8/10 -- agreed by telephone\n';
    await scratch.write('2026-03-02.md', mine);
    await eventually('new plan', () => (shown.under('Sessions').length < before && !shown.busy) || undefined);
    assert.match(shown.placeholder ?? '', /changed/);
    shown.accept('Write');
    await written;
    assert.ok((await scratch.read('2026-03-02.md')).startsWith(mine));
    assert.equal(await exist(), 7);
  });

  it('writes nothing that was planned for other words', async () => {
    await opened(roomy);
    const written = start();
    const shown = await list();
    const mine = '# Monday\n\nWords of mine.\n';
    await scratch.write('2026-03-02.md', mine);
    // At once, before anything has told of the note.
    shown.accept('Write');
    const again = await list(2);
    assert.equal(await scratch.read('2026-03-02.md'), mine);
    again.escape();
    await written;
    assert.equal(await scratch.read('2026-03-02.md'), mine);
  });

  it('plans again when it is asked to, and keeps what was unticked', async () => {
    await opened(roomy);
    const written = start();
    const shown = await list();
    shown.accept('Mon, Mar 2');
    shown.pressButton();
    await eventually('end of planning', () => !shown.busy || undefined);
    assert.match(shown.under('Sessions')[0] ?? '', /circle-large-outline\) Mon, Mar 2/);
    shown.escape();
    await written;
  });

  const missed = {
    'goals.md': '- #need flexibility 2/week 60min 8/10\n',
    'hours.md': `${noRecovery}- #free mon thu fri sat 18:00-20:00\n`,
    '2026-02-23.md': '# Monday\n\n- [ ] #session flexibility 18:00 60min 8/10\n  - splits\n\nMy words.\n',
    '2026-02-26.md': '- [ ] #session strength 18:00 60min 5/10 with:coach\n',
  };

  it('shows where a missed session goes, and moves nothing that is agreed with somebody', async () => {
    await opened(missed);
    const written = start('rearrange');
    const shown = await list();
    const rows = shown.under('New places');
    assert.ok(rows.some((row) => /flexibility/.test(row)));
    shown.accept();
    await written;
    assert.match(
      await scratch.read('2026-02-23.md'),
      /^# Monday\n\n- \[ \] #session flexibility 18:00 60min 8\/10 moved:2026-02-2\d\n {2}- splits\n\nMy words\.\n$/,
    );
    assert.ok((await scratch.read('2026-02-26.md')).startsWith(missed['2026-02-26.md']));
  });

  it('is opened by the quick fix on a missed session, as its only step before Enter', async () => {
    await opened(missed);
    await scratch.show('2026-02-23.md', '#session');
    const finding = await findingIn(scratch.uri('2026-02-23.md'), 'session-overdue');
    const action = await eventually('quick fix of this journal', async () => {
      const offered = await vscode.commands.executeCommand<vscode.CodeAction[]>(
        'vscode.executeCodeActionProvider',
        scratch.uri('2026-02-23.md'),
        finding.range,
        vscode.CodeActionKind.QuickFix.value,
      );
      return offered.find(
        ({ title, command }) =>
          title === 'Rearrange the rest of this week' &&
          command?.arguments?.[0] === scratch.folder.toString(),
      );
    });
    await endLists(
      vscode.commands.executeCommand(action.command?.command ?? '', ...(action.command?.arguments ?? [])),
      [accept],
      300,
    );
    const [, target = ''] = /moved:(2026-02-2\d)/.exec(await scratch.read('2026-02-23.md')) ?? [];
    assert.equal(await scratch.exists(`${target}.md`), true);
    // One of the changed notes is in front, so that one undo takes the whole step back.
    await vscode.commands.executeCommand('undo');
    const before = new Map<string, string>(Object.entries(missed)).get(`${target}.md`);
    await eventually('both notes as they were', async () => {
      const monday = await vscode.workspace.openTextDocument(scratch.uri('2026-02-23.md'));
      const isThere = await scratch.exists(`${target}.md`);
      const other = isThere && (await vscode.workspace.openTextDocument(scratch.uri(`${target}.md`)));
      const isAsBefore = other ? other.getText() === before : before === undefined;
      return (monday.getText() === missed['2026-02-23.md'] && isAsBefore) || undefined;
    });
  });

  it('stops when it is told to, and has planned nothing', async () => {
    await opened({ ...roomy, 'goals.md': `${needs}- #need strength 2/week 60min\n` });
    const weeks = Array.from({ length: 12 }, (_, index) => parseIsoWeek(`2026-W${10 + index}`)).filter(
      (week) => week !== undefined,
    );
    assert.equal(weeks.length, 12);
    const plan = (isStopped: boolean) =>
      planInSlices(journals, journal, (open) => planOptions(open, weeks, 'new'), {
        after: 0,
        show: (planning, stop) => {
          if (isStopped) stop();
          return planning;
        },
      });
    assert.equal(await plan(true), undefined);
    assert.ok(((await plan(false))?.plan.changes.length ?? 0) > 0);
  });

  it('offers the best places for a missed session beside the first legal one, with what each costs', async () => {
    await opened(missed);
    await scratch.show('2026-02-23.md', '#session');
    const finding = await findingIn(scratch.uri('2026-02-23.md'), 'session-overdue');
    const offered = await eventually('three places within the free hours', async () => {
      const found = await vscode.commands.executeCommand<vscode.CodeAction[]>(
        'vscode.executeCodeActionProvider',
        scratch.uri('2026-02-23.md'),
        finding.range,
        vscode.CodeActionKind.QuickFix.value,
      );
      const moves = found.filter(({ title }) => title.startsWith('Move it to '));
      // While the note with the free hours is still being read, other places are offered.
      return moves.length === 3 && moves.every(({ title }) => !title.includes('Sunday')) ? moves : undefined;
    });
    const titles = offered.map(({ title }) => title);
    assert.match(titles[0] ?? '', /the first (day|place) that breaks no rule/);
    for (const title of titles.slice(1))
      assert.match(title, /^Move it to \w+day, 2026-\d\d-\d\d(, at [\d:]+)?: ./);
    assert.equal(new Set(titles.map((title) => /\d{4}-\d\d-\d\d/.exec(title)?.[0])).size, 3);
  });
});
