import assert from 'node:assert/strict';
import { type LiveEditor, openLiveEditor, writeJournal } from './live-editor';

/** Waits until `holds`, and fails with `what` when it never does. */
async function until(what: string, holds: () => boolean): Promise<void> {
  for (let tries = 0; tries < 150; tries += 1) {
    if (holds()) return;
    await new Promise((resolve) => setTimeout(resolve, 200));
  }
  assert.fail(what);
}

describe('a person plans around what happened', () => {
  // 2026-02-25 is a Wednesday; Monday's session was missed.
  const monday = '# Monday\n\n- [ ] #session flexibility 18:00 60min 8/10\n  - splits\n\nMy words.\n';
  const goals = '# Goals\n\n- #need flexibility 2/week 60min 8/10 gap:72h\n';
  const journal = writeJournal({
    'journal.md': '# Journal\n\n- #rule recovery min:0/week\n- #free mon wed 18:00-20:00\n',
    'goals.md': goals,
    '2026-02-23.md': monday,
  });
  let editor: LiveEditor;

  before(async () => {
    editor = await openLiveEditor({
      folder: journal.path,
      width: 1500,
      height: 1100,
      settings: { 'trainingJournal.today': '2026-02-25', 'trainingJournal.timeZone': 'Europe/Lisbon' },
    });
    await editor.openViewContainer('Training Journal');
  });

  after(async () => {
    await editor.close();
    journal.remove();
  });

  const listRow = (text: string | RegExp) =>
    editor.page.locator('.quick-input-list .monaco-list-row', { hasText: text }).first();

  it('gives a missed session a new place in two clicks: its arrows in the week, and the row that writes', async () => {
    const missed = editor.page
      .locator('.pane:has(.pane-header[aria-label^="Week"]) .monaco-list-row', { hasText: 'overdue' })
      .first();
    await missed.hover();
    await missed.getByRole('button', { name: /Rearrange the Rest of This Week/ }).click();
    await listRow(/moved from Monday/).waitFor();
    assert.equal(journal.read('2026-02-23.md'), monday);
    await listRow('Write 1 session').click();
    await until('the session stands on Wednesday', () => {
      // A new file is there before its words are.
      return journal.files().includes('2026-02-25.md') && journal.read('2026-02-25.md') !== '';
    });
    assert.match(
      journal.read('2026-02-25.md'),
      /- \[ \] #session flexibility 18:00 60min 8\/10\n {2}- splits\n/,
    );
    await until('Monday says where it went', () => journal.read('2026-02-23.md') !== monday);
    assert.equal(journal.read('2026-02-23.md'), monday.replace('8/10', '8/10 moved:2026-02-25'));
  });

  it('reads in one sentence why next week cannot hold everything', async () => {
    await editor.runCommand('Training: Write Next Week’s Notes');
    await listRow('2 flexibility sessions 72 h apart and no other free hours').waitFor();
    await listRow('Write 1 session').waitFor();
  });

  it('changes the rule from the list, and sees the new plan, in which everything fits', async () => {
    await listRow(/Make it \d+ h in place of 72 h/).click();
    await listRow('Write 2 sessions').waitFor();
    await until('the line is changed', () => journal.read('goals.md') !== goals);
    assert.match(journal.read('goals.md'), /^# Goals\n\n- #need flexibility 2\/week 60min 8\/10 gap:\d+h\n$/);
    await editor.press('Escape');
    await editor.page.locator('.quick-input-widget').waitFor({ state: 'hidden' });
    assert.equal(
      journal.files().some((file) => file.startsWith('2026-03')),
      false,
    );
  });
});
