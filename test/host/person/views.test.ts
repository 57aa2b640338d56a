import assert from 'node:assert/strict';
import { type LiveEditor, openLiveEditor, writeJournal } from './live-editor';

describe('a person looks at the training views', () => {
  // 2026-02-25 is a Wednesday.
  const journal = writeJournal({
    'journal.md': '# Journal\n\n#athlete "Ilka"\n',
    'goals.md': [
      '# Goals',
      '',
      '- #goal low-split by:2026-06-14 "Front split for the act"',
      '- #why The act ends in it.',
      '- #metric pelvis-gap from:16cm to:4cm',
      '- #need flexibility 2/week 75min 8/10',
      '',
    ].join('\n'),
    '2026-02-23.md': '# Monday\n\n- #measure low-split pelvis-gap 9.8cm\n',
    '2026-02-24.md': '# Tuesday\n\n- [ ] #session flexibility 18:30 75min 8/10\n',
    '2026-02-25.md': '# Wednesday\n\n- [ ] #session recovery 20:00 30min 2/10 with:juno\n',
    '2026-03-03.md': '# Tuesday\n\n- [ ] #session flexibility 18:30 75min 8/10\n',
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

  /** A row of one of the views. */
  const row = (view: string, text: string | RegExp) =>
    editor.page
      .locator(`.pane:has(.pane-header[aria-label^="${view}"]) .monaco-list-row`, { hasText: text })
      .first();

  /** Presses a button of a row, as it appears under the mouse. */
  const pressInRow = async (view: string, text: string, button: RegExp) => {
    await row(view, text).hover();
    await row(view, text).getByRole('button', { name: button }).click();
  };

  it('sees what is overdue and what is due today, in words and each state in its own shape', async () => {
    await row('Due', 'overdue since yesterday').waitFor();
    assert.equal(await row('Due', 'flexibility 18:30').locator('.codicon-history').count(), 1);
    await row('Due', 'planned, with juno').waitFor();
    assert.equal(await row('Due', 'recovery 20:00').locator('.codicon-circle-large-outline').count(), 1);
  });

  it('hears the whole state of a session', async () => {
    const label = await row('Due', 'flexibility 18:30').getAttribute('aria-label');
    assert.equal(label, 'flexibility 18:30, Tuesday, February 24, overdue since yesterday');
  });

  it('sees how many sessions are overdue on the icon, and the count of the week in the status bar', async () => {
    const badge = editor.page.locator('.activitybar .badge-content').filter({ hasText: /^1$/ });
    await badge.waitFor();
    assert.ok((await editor.statusBar()).some((text) => text.includes('0 of 2 this week')));
  });

  it('sees the goal with its latest reading and next session, and never the reason', async () => {
    await row('Goals', '109 days left').waitFor();
    await row('Goals', '9.8 cm, target 4 cm, 51% of the way, 1 reading').waitFor();
    await row('Goals', /Next: flexibility 18:30.*Tuesday, planned/).waitFor();
    assert.equal(await editor.page.getByText('The act ends in it').count(), 0);
  });

  it('comes to the line of a session with a click', async () => {
    await row('Due', 'flexibility 18:30').click();
    await editor.page.locator('.tab.active[data-resource-name="2026-02-24.md"]').waitFor();
    await editor.page.locator('.statusbar-item', { hasText: 'Ln 3, Col 7' }).waitFor();
  });

  it('ticks a session in its row: the note is written, the views and counts follow', async () => {
    await pressInRow('Due', 'flexibility 18:30', /Tick/);
    await row('Due', 'overdue since yesterday').waitFor({ state: 'detached' });
    // The views follow what is written at once; the disk follows when it is saved.
    while (!journal.read('2026-02-24.md').includes('[x]')) await editor.page.waitForTimeout(50);
    assert.equal(journal.read('2026-02-24.md'), '# Tuesday\n\n- [x] #session flexibility 18:30 75min 8/10\n');
    await editor.page.locator('.statusbar-item', { hasText: '1 of 2 this week' }).waitFor();
    await editor.page
      .locator('.activitybar .badge-content')
      .filter({ hasText: /^1$/ })
      .waitFor({ state: 'hidden' });
    await row('Week', 'done 8/10').waitFor();
  });

  it('turns to next week and back', async () => {
    const view = editor.page.locator('.pane', {
      has: editor.page.locator('.pane-header[aria-label^="Week"]'),
    });
    const week = (text: string) => view.locator('.pane-header .description', { hasText: text }).waitFor();
    await week('2026-W09');
    await view.hover();
    await view.getByRole('button', { name: 'Next Week', exact: true }).click();
    await week('2026-W10');
    await row('Week', 'Tuesday, March 3').waitFor();
    await view.hover();
    await view.getByRole('button', { name: 'This Week', exact: true }).click();
    await week('2026-W09');
    await row('Week', /Wednesday, February 25.*today/).waitFor();
  });

  it('sees a session appear while it is typed, before it is saved', async () => {
    await editor.openFile('2026-02-25.md');
    await editor.press('Control+End');
    await editor.insert('- [ ] #session skill 21:00 45min\n');
    await row('Due', 'skill 21:00').waitFor();
    assert.doesNotMatch(journal.read('2026-02-25.md'), /skill/);
  });
});
