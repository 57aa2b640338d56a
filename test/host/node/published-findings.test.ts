import assert from 'node:assert/strict';
import * as vscode from 'vscode';
import {
  codesIn,
  eventually,
  findingIn,
  findingsIn,
  noFindingIn,
  type ScratchJournal,
  scratchJournal,
  workspaceRoot,
} from '../scratch-journal';

// Today is Wednesday, 2026-02-25, in week 9: see the settings of the workspace. Weeks 8 to 11 are in view.
const unreadable = '- [ ] #session recovery 99:30\n';

/** Sets a setting of the workspace; `undefined` takes it out again. */
async function set(name: string, value: unknown): Promise<void> {
  const settings = vscode.workspace.getConfiguration('trainingJournal', workspaceRoot());
  await settings.update(name, value, vscode.ConfigurationTarget.Workspace);
}

describe('findings of a journal', () => {
  let journal: ScratchJournal;

  before(async () => {
    journal = await scratchJournal('published', {
      'journal.md': '#athlete "Dipper"\n#zone Europe/Lisbon\n- #rule flexibility gap:48h\n',
      '2026-02-01.md': unreadable,
      '2026-02-15.md': unreadable,
      '2026-02-16.md': unreadable,
      '2026-02-24.md': '- [x] #session flexibility 18:30 75min 8/10\n',
      '2026-02-25.md': '- [ ] #session flexibility 14:45 75min 8/10\n',
      '2026-03-15.md': unreadable,
      '2026-03-16.md': unreadable,
      'goals.md': '- #goal splits by:2026-13-40\n',
    });
    await findingIn(journal.uri('2026-02-16.md'), 'unreadable-field');
  });

  after(async () => journal.remove());

  it('are published for the week before this one and the two after it, and no further', async () => {
    await findingIn(journal.uri('2026-03-15.md'), 'unreadable-field');
    assert.deepEqual(codesIn(journal.uri('2026-02-15.md')), []);
    assert.deepEqual(codesIn(journal.uri('2026-03-16.md')), []);
  });

  it('are published for notes that plan, whatever the week', async () => {
    await findingIn(journal.uri('goals.md'), 'bad-date');
  });

  it('appear in an older note when it is opened, and go when it is closed', async () => {
    await journal.show('2026-02-01.md');
    const finding = await findingIn(journal.uri('2026-02-01.md'), 'unreadable-field');
    assert.equal(finding.range.start.character, '- [ ] #session recovery '.length);
    await vscode.commands.executeCommand('workbench.action.closeActiveEditor');
    await noFindingIn(journal.uri('2026-02-01.md'), 'unreadable-field');
  });

  it('name the other session, and its place', async () => {
    const finding = await findingIn(journal.uri('2026-02-25.md'), 'gap-too-short');
    const [related] = finding.relatedInformation ?? [];
    assert.equal(related?.location.uri.toString(), journal.uri('2026-02-24.md').toString());
    assert.equal(related?.location.range.start.line, 0);
    assert.match(related?.message ?? '', /\S/);
  });

  it('link their code to its page of the guide', async () => {
    const finding = await findingIn(journal.uri('2026-02-25.md'), 'gap-too-short');
    assert.ok(typeof finding.code === 'object');
    assert.equal(finding.code.target.scheme, 'command');
    assert.equal(finding.code.target.path, 'trainingJournal.openGuide');
    assert.deepEqual(JSON.parse(finding.code.target.query), ['findings/gap-too-short.md']);
  });

  it('stand at the characters that they are about while lines are added above them', async () => {
    const editor = await journal.show('2026-02-25.md');
    await editor.edit((edit) => edit.insert(new vscode.Position(0, 0), '# Wednesday\n\nWords.\n\n'));
    await eventually('finding four lines further down', () =>
      findingsIn(editor.document.uri).find(
        ({ range, message }) => range.start.line === 4 && /48 h/.test(message),
      ),
    );
    await vscode.commands.executeCommand('workbench.action.revertAndCloseActiveEditor');
  });

  it('are 50 a note at the most, and the last one says how many more there are', async () => {
    await journal.write('2026-02-27.md', unreadable.repeat(60));
    await findingIn(journal.uri('2026-02-27.md'), 'unreadable-field');
    const found = await eventually('fifty findings', () => {
      const all = findingsIn(journal.uri('2026-02-27.md'));
      return all.length === 50 ? all : undefined;
    });
    const more = found.filter(({ message }) => /\(\d+ more in this note\.\)/.test(message));
    assert.equal(more.length, 1);
    await vscode.workspace.fs.delete(journal.uri('2026-02-27.md'));
    await eventually('silence', () => codesIn(journal.uri('2026-02-27.md')).length === 0 || undefined);
  });

  it('go when they are switched off, and come back', async () => {
    await set('findings.enabled', false);
    try {
      await noFindingIn(journal.uri('2026-02-25.md'), 'gap-too-short');
      assert.deepEqual(codesIn(journal.uri('goals.md')), []);
    } finally {
      await set('findings.enabled', undefined);
    }
    await findingIn(journal.uri('2026-02-25.md'), 'gap-too-short');
    await findingIn(journal.uri('goals.md'), 'bad-date');
  });

  it('reach as far back and ahead as the settings say', async () => {
    await set('findings.weeksBefore', 4);
    await set('findings.weeksAfter', 0);
    try {
      await findingIn(journal.uri('2026-02-01.md'), 'unreadable-field');
      await noFindingIn(journal.uri('2026-03-15.md'), 'unreadable-field');
    } finally {
      await set('findings.weeksBefore', undefined);
      await set('findings.weeksAfter', undefined);
    }
    await noFindingIn(journal.uri('2026-02-01.md'), 'unreadable-field');
    await findingIn(journal.uri('2026-03-15.md'), 'unreadable-field');
  });

  it('follow the day from which the journal is looked at', async () => {
    await set('today', '2026-02-04');
    try {
      await findingIn(journal.uri('2026-02-01.md'), 'unreadable-field');
      await noFindingIn(journal.uri('2026-03-15.md'), 'unreadable-field');
    } finally {
      // The workspace of the tests stands on this day.
      await set('today', '2026-02-25');
    }
    await findingIn(journal.uri('2026-03-15.md'), 'unreadable-field');
  });

  it('go with their note', async () => {
    await vscode.workspace.fs.delete(journal.uri('goals.md'));
    await eventually('silence', () => codesIn(journal.uri('goals.md')).length === 0 || undefined);
  });
});
