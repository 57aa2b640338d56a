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

const session = (words: string) => `# A day\n\n- [ ] #session ${words}\n`;
const hard = session('flexibility 18:30 75min 8/10');

/** `2026-02-24.md:2` for each place that the finding speaks of. */
function relatedPlaces({ relatedInformation }: vscode.Diagnostic): readonly string[] {
  return (relatedInformation ?? []).map(({ location: { uri, range } }) =>
    [...uri.path.split('/').slice(-2), range.start.line].join(':'),
  );
}

/** The journals in which a goal of this id stands, by the names of their athletes. */
async function journalsWithGoal(id: string): Promise<readonly string[]> {
  const found = await vscode.commands.executeCommand<vscode.SymbolInformation[]>(
    'vscode.executeWorkspaceSymbolProvider',
    id,
  );
  return found
    .filter(({ name }) => name === id)
    .map(({ containerName }) => containerName)
    .sort();
}

async function until(id: string, journals: readonly string[]): Promise<void> {
  await eventually(`goal ${id} in ${journals.join(' and ') || 'no journal'}`, async () =>
    (await journalsWithGoal(id)).join() === journals.join() ? true : undefined,
  );
}

describe('a journal that changes on the disk', () => {
  let journal: ScratchJournal;

  beforeEach(async () => {
    journal = await scratchJournal('on-disk', {
      'journal.md': '#athlete "Dipper"\n#zone Europe/Lisbon\n',
      'log/2026-02-26.md': hard,
    });
  });

  afterEach(async () => journal.remove());

  const thursday = () => journal.uri('log/2026-02-26.md');

  it('reads a note that another program creates', async () => {
    await journal.write('log/2026-02-25.md', hard);
    const finding = await findingIn(thursday(), 'gap-too-short', /22 h 45 min/);
    assert.deepEqual(relatedPlaces(finding), ['log:2026-02-25.md:2']);
  });

  it('reads a note again that another program changes', async () => {
    await journal.write('log/2026-02-25.md', hard);
    await findingIn(thursday(), 'gap-too-short', /22 h 45 min/);
    await journal.write('log/2026-02-25.md', session('flexibility 08:30 75min 8/10'));
    await findingIn(thursday(), 'gap-too-short', /32 h 45 min/);
  });

  it('follows a note that another program renames', async () => {
    await journal.write('log/2026-02-25.md', hard);
    await findingIn(thursday(), 'gap-too-short', /22 h 45 min/);
    await vscode.workspace.fs.rename(
      journal.uri('log/2026-02-25.md'),
      journal.uri('log/2026-02-25 evening.md'),
    );
    await eventually('the new name', () =>
      findingsIn(thursday()).find((one) => relatedPlaces(one).includes('log:2026-02-25 evening.md:2')),
    );
    await vscode.workspace.fs.rename(
      journal.uri('log/2026-02-25 evening.md'),
      journal.uri('log/2026-02-20.md'),
    );
    await noFindingIn(thursday(), 'gap-too-short');
  });

  it('forgets a note that another program deletes', async () => {
    await journal.write('log/2026-02-25.md', hard);
    await findingIn(thursday(), 'gap-too-short');
    await vscode.workspace.fs.delete(journal.uri('log/2026-02-25.md'));
    await noFindingIn(thursday(), 'gap-too-short');
  });

  it('follows a folder that another program renames, deletes and brings back', async () => {
    await journal.write('old/block/2026-02-25.md', hard);
    await findingIn(thursday(), 'gap-too-short');
    await vscode.workspace.fs.rename(journal.uri('old'), journal.uri('older'));
    await eventually('the new place', () =>
      findingsIn(thursday()).find(({ relatedInformation }) =>
        relatedInformation?.some(({ location }) => location.uri.path.endsWith('/older/block/2026-02-25.md')),
      ),
    );
    await vscode.workspace.fs.delete(journal.uri('older'), { recursive: true });
    await noFindingIn(thursday(), 'gap-too-short');
    await journal.write('again/2026-02-25.md', hard);
    await findingIn(thursday(), 'gap-too-short');
  });

  it('leaves nothing behind of a note that is gone', async () => {
    await journal.write('log/2026-02-25.md', session('flexibility 99:30'));
    await findingIn(journal.uri('log/2026-02-25.md'), 'unreadable-field');
    await vscode.workspace.fs.delete(journal.uri('log/2026-02-25.md'));
    await eventually('silence', () => findingsIn(journal.uri('log/2026-02-25.md')).length === 0 || undefined);
  });
});

describe('a journal that the editor changes', () => {
  let journal: ScratchJournal;

  beforeEach(async () => {
    journal = await scratchJournal('in-editor', {
      'journal.md': '#athlete "Dipper"\n#zone Europe/Lisbon\n',
      'log/2026-02-26.md': hard,
      'log/2026-02-25.md': hard,
    });
    await findingIn(thursday(), 'gap-too-short', /22 h 45 min/);
  });

  afterEach(async () => journal.remove());

  const thursday = () => journal.uri('log/2026-02-26.md');
  const wednesday = () => journal.uri('log/2026-02-25.md');

  async function apply(change: (edit: vscode.WorkspaceEdit) => void): Promise<void> {
    const edit = new vscode.WorkspaceEdit();
    change(edit);
    assert.equal(await vscode.workspace.applyEdit(edit), true);
  }

  it('follows notes that are created, renamed and deleted', async () => {
    await apply((edit) => edit.deleteFile(wednesday()));
    await noFindingIn(thursday(), 'gap-too-short');
    await apply((edit) =>
      edit.createFile(journal.uri('log/2026-02-24.md'), { contents: new TextEncoder().encode(hard) }),
    );
    await findingIn(thursday(), 'gap-too-short', /46 h 45 min/);
    await apply((edit) => edit.renameFile(journal.uri('log/2026-02-24.md'), wednesday()));
    await findingIn(thursday(), 'gap-too-short', /22 h 45 min/);
  });

  it('follows folders that are renamed and deleted', async () => {
    await apply((edit) => edit.renameFile(journal.uri('log'), journal.uri('days')));
    const moved = journal.uri('days/2026-02-26.md');
    await findingIn(moved, 'gap-too-short', /22 h 45 min/);
    await eventually('silence at the old place', () => findingsIn(thursday()).length === 0 || undefined);
    await apply((edit) => edit.deleteFile(journal.uri('days'), { recursive: true }));
    await eventually('silence', () => findingsIn(moved).length === 0 || undefined);
  });

  it('reads what is typed before it is saved, and goes back when it is thrown away', async () => {
    const editor = await journal.show('log/2026-02-25.md');
    await editor.edit((edit) =>
      edit.replace(editor.document.lineAt(2).range, '- [ ] #session recovery 2/10'),
    );
    assert.equal(editor.document.isDirty, true);
    await noFindingIn(thursday(), 'gap-too-short');
    await vscode.commands.executeCommand('workbench.action.revertAndCloseActiveEditor');
    await findingIn(thursday(), 'gap-too-short', /22 h 45 min/);
    assert.equal(await journal.read('log/2026-02-25.md'), hard);
  });

  it('keeps what is unsaved when another program changes the note', async () => {
    const editor = await journal.show('log/2026-02-25.md');
    await editor.edit((edit) =>
      edit.replace(editor.document.lineAt(2).range, '- [ ] #session recovery 2/10'),
    );
    await noFindingIn(thursday(), 'gap-too-short');
    await journal.write('log/2026-02-25.md', session('flexibility 08:30 75min 8/10'));
    // A change elsewhere shows that what came before it has been taken in.
    await journal.write('log/2026-02-27.md', session('flexibility 77:30'));
    await findingIn(journal.uri('log/2026-02-27.md'), 'unreadable-field');
    await noFindingIn(thursday(), 'gap-too-short');
    assert.match(editor.document.getText(), /recovery 2\/10/);
  });
});

describe('several journals in one workspace folder', () => {
  let team: ScratchJournal;

  const goal = '#goal middle-split by:2026-06-14\n#why mine\n#metric gap from:14cm to:0cm\n';

  before(async () => {
    team = await scratchJournal('team', {
      'dipper/journal.md': '#athlete "Dipper"\n#zone Europe/Lisbon\n',
      'dipper/goals.md': goal,
      'dipper/2026-02-25.md': hard,
      'plover/journal.md': '#athlete "Plover"\n#zone Asia/Tokyo\n',
      'plover/2026-02-26.md': '# Thursday\n\n- [ ] #session flexibility 18:30 75min 8/10 for:middle-split\n',
      'rest/2026-02-27.md': '# Friday\n',
    });
    await until('middle-split', ['Dipper']);
  });

  after(async () => team.remove());

  it('does not mix the notes of two athletes', async () => {
    // Plover has no such goal, and has not trained on the day before.
    await findingIn(team.uri('plover/2026-02-26.md'), 'unknown-goal');
    await noFindingIn(team.uri('plover/2026-02-26.md'), 'gap-too-short');
  });

  it('reads a goal for the journal in which it stands, and for no other', async () => {
    await team.write('plover/goals.md', goal);
    await until('middle-split', ['Dipper', 'Plover']);
    await noFindingIn(team.uri('plover/2026-02-26.md'), 'unknown-goal');
  });

  it('gives a folder its own journal when journal.md appears in it, and takes it back when that goes', async () => {
    await team.write('rest/goals.md', goal.replace('middle-split', 'bridge'));
    // Without a journal.md of its own the folder belongs to the journal of the workspace folder.
    await until('bridge', ['Wren']);
    await team.write('rest/journal.md', '#athlete "Siskin"\n');
    await until('bridge', ['Siskin']);
    await vscode.workspace.fs.delete(team.uri('rest/journal.md'));
    await until('bridge', ['Wren']);
  });

  it('keeps the findings of an open note when its folder becomes a journal', async () => {
    await team.write('young/goals.md', goal);
    await team.write('young/2026-02-25.md', '- #measure middle-split gap 9deg\n');
    await team.show('young/2026-02-25.md');
    await findingIn(team.uri('young/2026-02-25.md'), 'unit-mismatch');
    await team.write('young/journal.md', '#athlete "Linnet"\n');
    await until('middle-split', ['Dipper', 'Linnet', 'Plover']);
    await findingIn(team.uri('young/2026-02-25.md'), 'unit-mismatch');
    await team.write('young/journal.md', '#athlete "Whinchat"\n');
    await until('middle-split', ['Dipper', 'Plover', 'Whinchat']);
    await findingIn(team.uri('young/2026-02-25.md'), 'unit-mismatch');
  });

  it('knows a journal.md that is typed and not saved yet, by the words in it', async () => {
    await team.write('rest/journal.md', '#athlete "Siskin"\n');
    await until('bridge', ['Siskin']);
    const editor = await team.show('rest/journal.md');
    await editor.edit((edit) => edit.replace(editor.document.lineAt(0).range, '#athlete "Bunting"'));
    await until('bridge', ['Bunting']);
  });
});
