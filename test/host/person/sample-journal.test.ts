import assert from 'node:assert/strict';
import { copyJournal, type LiveEditor, openLiveEditor } from './live-editor';

/** A row of one of the views. */
const rowOf = (editor: LiveEditor, view: string, text: string | RegExp) =>
  editor.page
    .locator('.pane', { has: editor.page.locator(`.pane-header[aria-label^="${view}"]`) })
    .locator('.monaco-list-row', { hasText: text })
    .first();

describe('a person takes the tour of the sample', () => {
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
  });

  after(async () => {
    await editor.close();
    journal.remove();
  });

  it('sees what is overdue, due today and due later in the week', async () => {
    await rowOf(editor, 'Due', /Overdue.*1 session/).waitFor();
    await rowOf(editor, 'Due', /skill 18:30.*overdue since Tuesday, with juno/).waitFor();
    await rowOf(editor, 'Due', /Today.*1 to do/).waitFor();
    await rowOf(editor, 'Due', /This week.*3 sessions/).waitFor();
    await editor.waitForStatus(/\d of \d this week/);
  });

  it('opens Thursday’s session from the week, and reads the hours in the message', async () => {
    await rowOf(editor, 'Week', 'flexibility 18:30').last().waitFor();
    const thursday = editor.page.locator('.monaco-list-row', { hasText: 'flexibility 18:30' });
    await thursday.and(editor.page.locator('[aria-label*="February 26"]')).last().click();
    await editor.page.locator('.tab.active[data-resource-name="2026-02-26.md"]').waitFor();
    await editor.waitForSquiggle('warning');
    const problem = await editor.waitForProblem('21 h 30 min after Wednesday');
    assert.match(problem, /48 h/);
  });

  it('is offered first to move it to the first day that breaks nothing', async () => {
    await editor.openFile('2026-02-26.md');
    await editor.goTo(3, 12);
    const [first] = await editor.quickFixes();
    assert.match(first ?? '', /^Move it to \w+day, \d{4}-\d\d-\d\d.*breaks no rule/);
    await editor.press('Escape');
  });

  it('sees all three goals drawn on the page, in colours of the theme, and reads them as tables', async () => {
    await editor.runCommand('Training: Open the Goal Page');
    const frame = await editor.webviewFrame();
    await frame.locator('canvas').nth(2).waitFor();
    const drawn = await frame.evaluate(() =>
      Array.from(document.querySelectorAll('canvas')).map((canvas) => {
        const data = canvas.getContext('2d')?.getImageData(0, 0, canvas.width, canvas.height).data ?? [];
        return Array.from(data).filter((value, index) => index % 4 === 3 && value > 0).length;
      }),
    );
    assert.equal(drawn.filter((pixels) => pixels > 1000).length, drawn.length);
    assert.ok((await frame.locator('table').count()) >= 3);
    assert.match(await frame.locator('canvas').first().getAttribute('aria-label').then(String), /\S/);
  });

  it('asks for nothing outside this machine', () => {
    assert.deepEqual(editor.outsideRequests, []);
  });
});

describe('a coach opens a folder with three athletes', () => {
  const journal = copyJournal('sample-journal/roster');
  let editor: LiveEditor;

  before(async () => {
    editor = await openLiveEditor({
      folder: journal.path,
      width: 1500,
      // Rows below the edge of a view are not drawn.
      height: 2200,
      settings: { 'trainingJournal.today': '2026-02-26' },
    });
    await editor.openViewContainer('Training Journal');
  });

  after(async () => {
    await editor.close();
    journal.remove();
  });

  it('sees a row an athlete in each view, and what is due in a few words', async () => {
    for (const view of ['Due', 'Week', 'Goals', 'Athletes'])
      for (const athlete of ['Heron', 'Swift', 'Wren']) await rowOf(editor, view, athlete).waitFor();
  });

  it('is asked whose journal a command is about', async () => {
    await editor.runCommand('Training: Write Next Week’s Notes');
    await editor.choose('Swift');
    await editor.page.locator('.quick-input-title', { hasText: 'sessions placed' }).waitFor();
    await editor.press('Escape');
    assert.deepEqual(
      journal.files().filter((file) => /2026-03-0[2-8]\.md$/.test(file) && file.startsWith('swift')),
      [],
    );
  });

  it('sees who needs a word first on the page of the athletes, and why', async () => {
    await editor.runCommand('Training: Open the Athletes');
    const page = await editor.webviewFrame();
    await page.locator('table.roster .name').nth(2).waitFor();
    assert.deepEqual(await page.locator('table.roster .name').allTextContents(), ['Wren', 'Heron', 'Swift']);
    await page.getByRole('rowheader', { name: /Wren.*Open pain: lower-back 5\/10/ }).waitFor();
    await page.getByRole('rowheader', { name: /Heron.*Fewer done lately: 3 of the last 9/ }).waitFor();
    await page.getByRole('rowheader', { name: /Swift.*Nothing asks for a word/ }).waitFor();
  });

  it('opens the note of the pain with a click', async () => {
    const page = await editor.webviewFrame();
    await page.getByRole('button', { name: /^Open pain: lower-back/ }).click();
    await editor.page.locator('.tab.active[data-resource-name="2026-02-24.md"]').waitFor();
  });

  it('adds a need to two journals, each shown first, and takes it out of both with one undo', async () => {
    const need = /^- #need strength 2\/week 60min 7\/10 gap:48h routine:pull$/m;
    const holders = () =>
      ['swift', 'wren'].filter((one) =>
        journal.files().some((file) => file.startsWith(`${one}/`) && need.test(journal.read(file))),
      );
    await editor.runCommand('Training: Add a Routine or a Need to Several Journals');
    await editor.choose('need strength 2/week 60min 7/10 gap:48h routine:pull');
    await editor.page.locator('.quick-input-title', { hasText: 'Into whose journals?' }).waitFor();
    await editor.page
      .locator('.quick-input-list .monaco-list-row', { hasText: /Swift.*with the routine pull/ })
      .waitFor();
    await editor.press('Enter');
    await editor.waitForStatus(/Added to 2 journals/);
    assert.deepEqual(holders(), ['swift', 'wren']);
    await editor.press('Control+z');
    // Both notes are as they were, unsaved.
    await editor.page.locator('.tab.dirty[data-resource-name="plan.md"]').nth(1).waitFor();
    await editor.runCommand('File: Save All Files');
    for (let tries = 0; holders().length > 0 && tries < 200; tries += 1) await editor.page.waitForTimeout(50);
    assert.deepEqual(holders(), []);
  });
});
