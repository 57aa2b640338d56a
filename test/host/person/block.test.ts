import assert from 'node:assert/strict';
import { copyJournal, type LiveEditor, openLiveEditor } from './live-editor';

describe('a person lays out ten weeks with a taper', () => {
  const journal = copyJournal('sample-journal/athlete');
  let editor: LiveEditor;

  before(async () => {
    editor = await openLiveEditor({
      folder: journal.path,
      width: 1500,
      height: 1100,
      settings: { 'trainingJournal.today': '2026-02-26' },
    });
    await editor.openViewContainer('Training Journal');
    await editor.waitForStatus('this week');
  });

  after(async () => {
    await editor.close();
    journal.remove();
  });

  const row = (text: string | RegExp) =>
    editor.page.locator('.quick-input-list .monaco-list-row', { hasText: text }).first();

  const note = 'block 2026-W10 to 2026-W19.md';

  it('chooses the weeks, the event and how much, and sees each week before anything is written', async () => {
    const before = journal.files();
    await editor.runCommand('Training: Lay Out a Block of Weeks');
    await row(/^10 weeks/).click();
    await row('A taper before Studio evening').click();
    await row('What your goals ask').click();
    await row('W10 Building').waitFor();
    assert.match(await row('W10 Building').textContent().then(String), /\+\d+ %|as before/);
    assert.deepEqual(journal.files(), before);
  });

  it('ticks a week, and writes the block with its day notes', async () => {
    await row('W10 Building').click();
    await row('Write the block and the day notes of 1 week').waitFor();
    await editor.press('Home');
    await row('Write the block and the day notes of 1 week').click();
    await editor.page.locator('.tab.active', { hasText: 'block 2026-W10' }).waitFor();
    const text = journal.read(note);
    const roles = [...text.matchAll(/^\| 2026-W(\d\d) .*\| (building|lighter|taper)[^|]*\|$/gm)].map(
      ([, week, role]) => `${week} ${role}`,
    );
    // The studio evening is on Saturday of week 16.
    assert.deepEqual(roles, [
      '10 building',
      '11 building',
      '12 building',
      '13 building',
      '14 building',
      '15 taper',
      '16 taper',
      '17 building',
      '18 building',
      '19 building',
    ]);
    assert.ok(journal.files().some((path) => path.endsWith('2026-03-02.md')));
    assert.ok(!journal.files().some((path) => path.endsWith('2026-03-09.md')));
  });
});
