import assert from 'node:assert/strict';
import * as vscode from 'vscode';
import {
  eventually,
  findingIn,
  findingsIn,
  noFindingIn,
  type ScratchJournal,
  scratchJournal,
} from '../scratch-journal';

// Today is Wednesday, 2026-02-25.
const noRecovery = '- #rule recovery min:0/week\n';
const noRest = '- #rule rest-day min:0/week\n';

interface Example {
  /** What the quick fix does, for the name of the test. */
  readonly does: string;
  readonly notes: Readonly<Record<string, string>>;
  readonly finding: string;
  readonly note: string;
  readonly title: RegExp;
  /** What the changed notes read afterwards; all others are as they were. */
  readonly after: Readonly<Record<string, string>>;
}

/** Days with a session each, as a part of a journal. */
function days(dates: readonly string[], line: string): Readonly<Record<string, string>> {
  return Object.fromEntries(dates.map((date) => [`${date}.md`, line]));
}

const twoHard = {
  'journal.md': noRecovery,
  '2026-02-24.md': '- [x] #session flexibility 18:30 75min 8/10\n',
  '2026-02-25.md':
    '# Wednesday\n\n- [ ] #session flexibility 14:45 75min 8/10 -- hips\n  - warm-up\n\nWords of mine.\n',
  '2026-02-27.md': '# Friday\n\n- [ ] #session strength 14:45 60min 6/10\n',
};

const examples: readonly Example[] = [
  {
    does: 'moves the session to the first day that breaks no rule, with its body',
    notes: twoHard,
    finding: 'gap-too-short',
    note: '2026-02-25.md',
    title: /^Move it to Saturday, 2026-02-28: the first day that breaks no rule/,
    after: {
      '2026-02-25.md':
        '# Wednesday\n\n- [ ] #session flexibility 14:45 75min 8/10 moved:2026-02-28 -- hips\n  - warm-up\n\nWords of mine.\n',
      '2026-02-28.md':
        '# Saturday, 2026-02-28\n\n- [ ] #session flexibility 14:45 75min 8/10 -- hips\n  - warm-up\n',
    },
  },
  {
    does: 'swaps the session with another of the week',
    notes: twoHard,
    finding: 'gap-too-short',
    note: '2026-02-25.md',
    title: /^Swap it with the strength session of Friday$/,
    after: {
      '2026-02-25.md':
        '# Wednesday\n\n- [ ] #session flexibility 14:45 75min 8/10 moved:2026-02-27 -- hips\n  - warm-up\n- [ ] #session strength 14:45 60min 6/10\n\nWords of mine.\n',
      '2026-02-27.md':
        '# Friday\n\n- [ ] #session strength 14:45 60min 6/10 moved:2026-02-25\n- [ ] #session flexibility 14:45 75min 8/10 -- hips\n  - warm-up\n',
    },
  },
  {
    does: 'turns the session into recovery',
    notes: twoHard,
    finding: 'gap-too-short',
    note: '2026-02-25.md',
    title: /into recovery at effort 2$/,
    after: {
      '2026-02-25.md':
        '# Wednesday\n\n- [ ] #session recovery 14:45 75min 2/10 -- hips\n  - warm-up\n\nWords of mine.\n',
    },
  },
  {
    does: 'marks the session skipped with a reason',
    notes: twoHard,
    finding: 'gap-too-short',
    note: '2026-02-25.md',
    title: /^Mark it skipped: sore$/,
    after: {
      '2026-02-25.md':
        '# Wednesday\n\n- [ ] #session flexibility 14:45 75min 8/10 skipped:sore -- hips\n  - warm-up\n\nWords of mine.\n',
    },
  },
  {
    does: 'ticks a session as done, in a note with CR LF and a byte order mark',
    notes: {
      'journal.md': noRecovery,
      '2026-02-23.md': '\uFEFF# Monday\r\n\r\n- [ ] #session skill 18:30 60min 5/10\r\n',
    },
    finding: 'session-overdue',
    note: '2026-02-23.md',
    title: /^Tick it as done$/,
    after: { '2026-02-23.md': '\uFEFF# Monday\r\n\r\n- [x] #session skill 18:30 60min 5/10\r\n' },
  },
  {
    does: 'adds the recovery session that is missing',
    notes: {
      'journal.md': '- #free mon tue wed thu fri 18:00-21:00\n- #routine easy recovery 30min\n  - feet up\n',
      '2026-02-23.md': '- [x] #session skill 18:30 60min 5/10\n',
      '2026-02-26.md': '- [ ] #session skill 18:30 60min 5/10\n',
    },
    finding: 'no-recovery-session',
    note: '2026-02-26.md',
    title: /^Add a recovery session on Wednesday, 2026-02-25, at 18:00$/,
    after: {
      '2026-02-25.md':
        '# Wednesday, 2026-02-25\n\n- [ ] #session recovery 18:00 30min 2/10 routine:easy\n  - feet up\n',
    },
  },
  {
    does: 'writes the unit that is meant',
    notes: {
      'journal.md': noRecovery,
      'goals.md': '- #goal split by:2026-06-14\n- #why fun\n- #metric gap from:14cm to:0cm\n',
      '2026-02-25.md': '- #measure split gap 9,5deg warm\n',
    },
    finding: 'unit-mismatch',
    note: '2026-02-25.md',
    title: /^Write /,
    after: { '2026-02-25.md': '- #measure split gap 9,5cm warm\n' },
  },
  {
    does: 'adds the goal that is missing',
    notes: {
      'journal.md': noRecovery,
      'goals.md': '# Goals\n\n- #goal split by:2026-06-14\n- #why fun\n- #metric gap from:14cm to:0cm\n',
      '2026-02-25.md': '- [ ] #session skill for:hoop 5/10\n',
    },
    finding: 'unknown-goal',
    note: '2026-02-25.md',
    title: /^Add the goal hoop$/,
    after: {
      'goals.md':
        '# Goals\n\n- #goal split by:2026-06-14\n- #why fun\n- #metric gap from:14cm to:0cm\n- #goal hoop\n',
    },
  },
  {
    does: 'adds a #why line',
    notes: { 'goals.md': '- #goal hoop by:2026-06-14\n- #metric hold from:3s to:20s\n', 'journal.md': '' },
    finding: 'goal-without-why',
    note: 'goals.md',
    title: /^Add a #why line/,
    after: { 'goals.md': '- #goal hoop by:2026-06-14\n- #why \n- #metric hold from:3s to:20s\n' },
  },
  {
    does: 'adds a date',
    notes: { 'goals.md': '- #goal hoop\n- #why fun\n- #metric hold from:3s to:20s\n', 'journal.md': '' },
    finding: 'goal-without-date',
    note: 'goals.md',
    title: /^Set the date to 2026-05-20, 12 weeks from today$/,
    after: { 'goals.md': '- #goal hoop by:2026-05-20\n- #why fun\n- #metric hold from:3s to:20s\n' },
  },
  {
    does: 'adds a metric from the first reading',
    notes: {
      'journal.md': '',
      'goals.md': '- #goal hoop by:2026-06-14\n- #why fun\n',
      '2026-02-24.md': '- #measure hoop hold 6s\n',
    },
    finding: 'goal-without-metric',
    note: 'goals.md',
    title: /^Add a #metric line hold from 6s/,
    after: { 'goals.md': '- #goal hoop by:2026-06-14\n- #why fun\n- #metric hold from:6s to:\n' },
  },
  {
    does: 'writes down that a pain is over',
    notes: {
      'journal.md': `${noRecovery}- #routine back flexibility 75min regions:lower-back\n`,
      '2026-02-23.md': '- #pain lower-back 5/10\n',
      '2026-02-26.md': '- [ ] #session flexibility 18:30 75min 8/10 routine:back\n',
    },
    finding: 'open-pain',
    note: '2026-02-26.md',
    title: /^Write down today that the pain is over: lower-back$/,
    after: { '2026-02-25.md': '# Wednesday, 2026-02-25\n\n- #pain lower-back 0/10 clear\n' },
  },
  {
    does: 'moves the date of a goal to the end of its forecast',
    notes: {
      'journal.md': noRecovery,
      'goals.md': '- #goal low-split by:2026-03-31\n- #why fun\n- #metric gap from:14cm to:0cm noise:0.5cm\n',
      '2026-01-26.md': '- #measure low-split gap 14cm warm\n',
      '2026-02-02.md': '- #measure low-split gap 13.4cm warm\n',
      '2026-02-09.md': '- #measure low-split gap 13.1cm warm\n',
      '2026-02-16.md': '- #measure low-split gap 12.4cm warm\n',
      '2026-02-23.md': '- #measure low-split gap 12cm warm\n',
    },
    finding: 'goal-pace',
    note: 'goals.md',
    title: /^Move the date to \d{4}-\d\d-\d\d, when the readings arrive at the latest$/,
    after: {
      'goals.md': '- #goal low-split by:LATEST\n- #why fun\n- #metric gap from:14cm to:0cm noise:0.5cm\n',
    },
  },
  {
    does: 'writes the gap that the notes show',
    notes: {
      'journal.md': `- #routine split-evening flexibility 60min regions:hamstrings\n${noRecovery}`,
      ...days(
        ['01-05', '01-09', '01-13', '01-18', '01-22', '01-27', '01-31'].map((day) => `2026-${day}`),
        '- [x] #session flexibility 18:30 60min 7/10 routine:split-evening\n',
      ),
      ...days(
        ['01-06', '01-10', '01-14', '01-19', '01-23', '01-28', '02-01'].map((day) => `2026-${day}`),
        '- [x] #session flexibility 18:30 60min 7/10 routine:split-evening\n- #sore hamstrings 5/10\n',
      ),
    },
    finding: 'gap-worth-changing',
    note: '2026-02-01.md',
    title: /^Write the rule #rule hamstrings gap:\d+h$/,
    after: {
      'journal.md': `- #routine split-evening flexibility 60min regions:hamstrings\n${noRecovery}- #rule hamstrings gap:SUGGESTED\n`,
    },
  },
];

/** The values that a quick fix says in its title, put where an example leaves them open. */
function filled(text: string, title: string): string {
  return text
    .replace('LATEST', /\d{4}-\d\d-\d\d/.exec(title)?.[0] ?? '')
    .replace('SUGGESTED', /\d+h$/.exec(title)?.[0] ?? '');
}

/** The quick fixes for a finding, and the one of them with the title; the cursor is put where the finding stands. */
async function quickFixes(note: vscode.Uri, finding: vscode.Diagnostic, title: RegExp) {
  const editor = await vscode.window.showTextDocument(note);
  editor.selection = new vscode.Selection(finding.range.start, finding.range.start);
  return eventually(`quick fix ${title}`, async () => {
    const offered = await vscode.commands.executeCommand<vscode.CodeAction[]>(
      'vscode.executeCodeActionProvider',
      note,
      editor.selection,
      vscode.CodeActionKind.QuickFix.value,
    );
    const chosen = offered.find((one) => title.test(one.title));
    return chosen && { offered, chosen };
  });
}

/** Takes the first quick fix of this kind at the cursor, as a key that is bound to it does. */
async function take({ chosen }: Awaited<ReturnType<typeof quickFixes>>): Promise<void> {
  await vscode.commands.executeCommand('editor.action.codeAction', {
    kind: chosen.kind?.value,
    apply: 'first',
  });
}

describe('a quick fix', () => {
  let journal: ScratchJournal | undefined;

  afterEach(async () => {
    await journal?.remove();
    journal = undefined;
  });

  for (const [index, { does, notes, finding: code, note, title, after }] of examples.entries()) {
    it(does, async () => {
      journal = await scratchJournal(`fix-${index}`, notes);
      const { uri, read } = journal;
      await journal.show(note);
      const found = await quickFixes(uri(note), await findingIn(uri(note), code), title);
      await take(found);
      const paths = Object.keys(after);
      await eventually('change on the disk', async () => {
        const texts = await Promise.all(paths.map((path) => read(path).catch(() => undefined)));
        return texts.every((text, at) => text !== notes[paths[at] ?? '']) || undefined;
      });
      for (const [path, text] of Object.entries({ ...notes, ...after }))
        assert.equal(await read(path), filled(text, found.chosen.title), `${path} on the disk`);
      const unsaved = () =>
        vscode.workspace.textDocuments.filter(({ isDirty }) => isDirty).map((document) => document.uri.path);
      // The disk has the words before the editor says that they are saved.
      await eventually('end of saving', () => unsaved().length === 0 || undefined);
      assert.deepEqual(unsaved(), []);
      if (code !== 'goal-without-why') await noFindingIn(uri(note), code);
    });
  }

  it('is one undo step in a single note', async () => {
    journal = await scratchJournal('fix-undone', twoHard);
    const note = journal.uri('2026-02-25.md');
    const { document } = await journal.show('2026-02-25.md');
    await take(await quickFixes(note, await findingIn(note, 'gap-too-short'), /into recovery/));
    await noFindingIn(note, 'gap-too-short');
    await vscode.commands.executeCommand('undo');
    assert.equal(document.getText(), twoHard['2026-02-25.md']);
    await findingIn(note, 'gap-too-short');
  });

  it('leaves unsaved what was unsaved before', async () => {
    // The editor itself saves all files of a quick fix that reaches into several, unless it is told not to.
    const files = vscode.workspace.getConfiguration('files');
    await files.update('refactoring.autoSave', false, vscode.ConfigurationTarget.Workspace);
    journal = await scratchJournal('fix-unsaved', twoHard);
    const { uri, read } = journal;
    const editor = await journal.show('2026-02-25.md');
    await findingIn(editor.document.uri, 'gap-too-short');
    await editor.edit((edit) => edit.insert(new vscode.Position(1, 0), 'Not saved yet.\n'));
    const finding = await eventually('finding a line further down', () =>
      findingsIn(uri('2026-02-25.md')).find(({ range }) => range.start.line === 3),
    );
    await take(await quickFixes(uri('2026-02-25.md'), finding, /^Move it to/));
    await eventually('saved session', () => read('2026-02-28.md').catch(() => undefined));
    assert.equal(editor.document.isDirty, true);
    assert.match(editor.document.getText(), /Not saved yet\.\n.*moved:2026-02-28/s);
    assert.equal(await read('2026-02-25.md'), twoHard['2026-02-25.md']);
    assert.match(await read('2026-02-28.md'), /#session flexibility 14:45/);
    await files.update('refactoring.autoSave', undefined, vscode.ConfigurationTarget.Workspace);
  });

  it('is preferred when it is the usual way out, and only one is', async () => {
    journal = await scratchJournal('fix-preferred', twoHard);
    const note = journal.uri('2026-02-25.md');
    await journal.show('2026-02-25.md');
    const { offered } = await quickFixes(note, await findingIn(note, 'gap-too-short'), /^Move it to/);
    assert.deepEqual(
      offered.filter((one) => one.isPreferred).map(({ title }) => title),
      ['Move it to Saturday, 2026-02-28: the first day that breaks no rule; parts two hard days'],
    );
  });

  it('is not offered where nothing was found', async () => {
    journal = await scratchJournal('fix-nothing', twoHard);
    const note = journal.uri('2026-02-25.md');
    await journal.show('2026-02-25.md');
    await quickFixes(note, await findingIn(note, 'gap-too-short'), /^Move it to/);
    const elsewhere = await vscode.commands.executeCommand<vscode.CodeAction[]>(
      'vscode.executeCodeActionProvider',
      note,
      new vscode.Range(5, 0, 5, 3),
      vscode.CodeActionKind.QuickFix.value,
    );
    assert.deepEqual(
      elsewhere.filter(({ kind }) => kind?.value.startsWith('quickfix.training')).map(({ title }) => title),
      [],
    );
  });

  it('writes next week smaller when sessions are missed', async () => {
    journal = await scratchJournal('fix-slipping', {
      'journal.md': `${noRest}${noRecovery}- #need skill 4/week 45min 5/10\n`,
      ...days(
        ['01-05', '01-07', '01-09', '01-11', '01-12', '01-14', '01-16', '01-18', '01-19', '01-21']
          .concat(['01-23', '01-25', '01-26', '01-28', '01-30', '02-01', '02-02', '02-04', '02-06', '02-08'])
          .map((day) => `2026-${day}`),
        '- [x] #session skill 18:30 45min 5/10\n',
      ),
      ...days(
        ['02-13', '02-16', '02-18', '02-20'].map((day) => `2026-${day}`),
        '- [ ] #session skill 18:30 45min 5/10 skipped:tired\n',
      ),
    });
    const { uri, read } = journal;
    await journal.show('2026-02-20.md');
    const finding = await findingIn(uri('2026-02-20.md'), 'slipping');
    const found = await quickFixes(uri('2026-02-20.md'), finding, /^Write next week smaller: \d+ training/);
    await take(found);
    const nextWeek = ['03-02', '03-03', '03-04', '03-05', '03-06', '03-07', '03-08'];
    const texts = await eventually('seven notes', () =>
      Promise.all(nextWeek.map((day) => read(`2026-${day}.md`))).catch(() => undefined),
    );
    const wanted = Number(/smaller: (\d+)/.exec(found.chosen.title)?.[1]);
    assert.equal(texts.join('').match(/#session skill/g)?.length, wanted);
  });
});
