import assert from 'node:assert/strict';
import * as vscode from 'vscode';
import { accept, endLists } from '../end-lists';
import { eventually, findingIn, noFindingIn, type ScratchJournal, scratchJournal } from '../scratch-journal';

// Today is Wednesday, 2026-02-25.
const wednesday = '# Wednesday\n\n- [ ] #session flexibility 14:45 75min 8/10 -- hips\n  - warm-up\n';

describe("a person's path in the browser's worker", () => {
  let journal: ScratchJournal;

  before(async () => {
    journal = await scratchJournal('path', {
      'journal.md': '#athlete "Dipper"\n#zone Europe/Lisbon\n',
      'goals.md':
        '- #goal low-split by:2026-06-14\n- #why mine\n- #metric gap from:14cm to:0cm\n- #need flexibility 2/week 75min 8/10\n',
      'log/2026-02-24.md':
        '# Tuesday\n\n- [x] #session flexibility 18:30 75min 8/10\n- #measure low-split gap 12cm\n',
      'log/2026-02-25.md': wednesday,
    });
  });

  after(async () => journal.remove());

  it('leads from the finding through its quick fix to a note that is written', async () => {
    const note = journal.uri('log/2026-02-25.md');
    const editor = await journal.show('log/2026-02-25.md', '#session');
    await findingIn(note, 'gap-too-short', /19 h/);
    const chosen = await eventually('quick fix', async () => {
      const offered = await vscode.commands.executeCommand<vscode.CodeAction[]>(
        'vscode.executeCodeActionProvider',
        note,
        editor.selection,
        vscode.CodeActionKind.QuickFix.value,
      );
      return offered.find(({ title }) => /^Move it to .*breaks no rule/.test(title));
    });
    const target = /\d{4}-\d\d-\d\d/.exec(chosen.title)?.[0] ?? '';
    await vscode.commands.executeCommand('editor.action.codeAction', {
      kind: chosen.kind?.value,
      apply: 'first',
    });
    const moved = await eventually('moved session', () =>
      journal.read(`log/${target}.md`).catch(() => undefined),
    );
    assert.ok(moved.endsWith('- [ ] #session flexibility 14:45 75min 8/10 -- hips\n  - warm-up\n'), moved);
    await eventually(
      'saved note',
      async () => (await journal.read('log/2026-02-25.md')) !== wednesday || undefined,
    );
    assert.equal(
      await journal.read('log/2026-02-25.md'),
      wednesday.replace('75min 8/10 --', `75min 8/10 moved:${target} --`),
    );
    await noFindingIn(note, 'gap-too-short');
  });

  /** Runs a command of this journal, and takes the first row of every list that it opens. */
  const runAccepting = (command: string) =>
    endLists(
      vscode.commands.executeCommand(`trainingJournal.${command}`, journal.folder.toString()),
      [accept],
      300,
    );

  it("writes next week's notes, and adds nothing the second time", async () => {
    const week = ['02', '03', '04', '05', '06', '07', '08'].map((day) => `log/2026-03-${day}.md`);
    const texts = await eventually('seven notes', async () => {
      await runAccepting('writeNextWeek');
      return Promise.all(week.map((path) => journal.read(path))).catch(() => undefined);
    });
    assert.equal(texts.join('').match(/#session flexibility/g)?.length, 2);
    await runAccepting('writeNextWeek');
    assert.deepEqual(await Promise.all(week.map((path) => journal.read(path))), texts);
  });

  it('finds a new place for a missed session in the rest of the week', async () => {
    const missed = '- [ ] #session skill 07:00 30min 4/10\n';
    await journal.write('log/2026-02-23.md', missed);
    await findingIn(journal.uri('log/2026-02-23.md'), 'session-overdue');
    await runAccepting('rearrangeWeek');
    const [, target = ''] = await eventually(
      'moved session',
      async () => /moved:(2026-0\d-\d\d)/.exec(await journal.read('log/2026-02-23.md')) ?? undefined,
    );
    assert.match(await journal.read(`log/${target}.md`), /#session skill \d\d:\d\d 30min 4\/10/);
  });

  const pageNamed = (viewType: string, label: string) =>
    eventually(`page ${label}`, () =>
      vscode.window.tabGroups.all
        .flatMap(({ tabs }) => tabs)
        .find(
          (tab) =>
            tab.input instanceof vscode.TabInputWebview &&
            tab.input.viewType.includes(viewType) &&
            tab.label === label,
        ),
    );

  it('opens the goal page', async () => {
    await vscode.commands.executeCommand('trainingJournal.openGoalPage', {
      journal: journal.folder.toString(),
      goal: 'low-split',
    });
    // The page has this name once it has said that it listens, and was given its figures.
    await pageNamed('trainingJournal.goalPage', 'low-split');
  });

  it('opens the page about load and recovery, which follows the notes', async () => {
    await vscode.commands.executeCommand('trainingJournal.openLoadPage', {
      journal: journal.folder.toString(),
    });
    await pageNamed('trainingJournal.loadPage', 'Load and recovery: Dipper');
    // Only a page that has said that it listens is given figures and, with them, another name.
    await journal.write('journal.md', '#athlete "Grebe"\n#zone Europe/Lisbon\n');
    await pageNamed('trainingJournal.loadPage', 'Load and recovery: Grebe');
  });

  it('completes the name of a goal', async () => {
    const { document } = await journal.show('log/2026-02-24.md');
    const end = document.lineAt(document.lineCount - 1).range.end;
    const edit = new vscode.WorkspaceEdit();
    edit.insert(document.uri, end, '- [ ] #session skill for:');
    await vscode.workspace.applyEdit(edit);
    const { items } = await vscode.commands.executeCommand<vscode.CompletionList>(
      'vscode.executeCompletionItemProvider',
      document.uri,
      document.lineAt(document.lineCount - 1).range.end,
      ':',
    );
    const labels = items.map(({ label }) => (typeof label === 'string' ? label : label.label));
    assert.ok(labels.includes('low-split'), labels.join());
  });
});
