import assert from 'node:assert/strict';
import { type LiveEditor, openLiveEditor, writeJournal } from './live-editor';

describe('a person reads what a finding means, and changes their mind', () => {
  const wednesday = '# Wednesday\n\n- [ ] #session flexibility 14:45 75min 8/10\n  - hips\n\nSome words.\n';
  const journal = writeJournal({
    'journal.md': '# Journal\n\n#athlete "Ilka"\n\n- #rule recovery min:0/week\n',
    'goals.md':
      '- #goal low-split by:2026-06-14 "Front split on the floor"\n- #why mine\n- #metric gap from:14cm to:0cm sides\n',
    '2026-02-24.md': '# Tuesday\n\n- [x] #session flexibility 18:30 75min 8/10\n',
    '2026-02-25.md': wednesday,
  });
  let editor: LiveEditor;

  before(async () => {
    editor = await openLiveEditor({
      folder: journal.path,
      settings: { 'trainingJournal.today': '2026-02-25', 'trainingJournal.timeZone': 'Europe/Lisbon' },
    });
    await editor.openFile('2026-02-25.md');
    await editor.waitForSquiggle('warning');
  });

  after(async () => {
    await editor.close();
    journal.remove();
  });

  /** Waits until the disk is as wished; fails by the clock of the test. */
  const onDisk = async (isAsWished: () => boolean) => {
    while (!isAsWished()) await editor.page.waitForTimeout(50);
  };

  it('reads the message with the keyboard, and the earlier session in it', async () => {
    await editor.goTo(3, 12);
    const text = await editor.hoverText();
    assert.match(text, /19 h after Tuesday's flexibility session; the rule asks 48 h/);
    assert.match(text, /2026-02-24\.md\(3, 7\)/);
  });

  it('opens the page of the guide from the name beside the message', async () => {
    await editor.followHoverLink('gap-too-short');
    const frame = await editor.webviewFrame();
    await frame.getByRole('heading', { name: 'gap-too-short' }).waitFor();
    await frame.getByText('Two sessions stand closer together than a rule allows.').waitFor();
  });

  it('finds the page still there after a look at the note', async () => {
    await editor.page.locator('.tab[data-resource-name="2026-02-25.md"]').click();
    await editor.page.locator('.editor-group-container.active .monaco-editor.focused').waitFor();
    await editor.page.locator('.tab', { hasText: 'gap-too-short.md' }).waitFor();
  });

  it('opens another page from the list of all problems', async () => {
    await editor.openFile('goals.md');
    await editor.press('Control+End');
    await editor.insert('- #goal bridge');
    await editor.waitForProblem('goal-without-date');
    await editor.page
      .locator('.markers-panel a', { hasText: 'goal-without-date' })
      .click({ modifiers: ['Control'] });
    const frame = await editor.webviewFrame();
    await frame.getByRole('heading', { name: 'goal-without-date' }).waitFor();
    await editor.page.locator('.tab[data-resource-name="goals.md"]').click();
    await editor.page.locator('.tab.active[data-resource-name="goals.md"]').waitFor();
    await editor.page.locator('.editor-group-container.active .monaco-editor.focused').waitFor();
    await editor.press('Control+z');
    await editor.waitForNoProblem('goal-without-date');
  });

  it('takes the quick fix with the keyboard alone, and takes it back with one undo in both notes', async () => {
    await editor.openFile('2026-02-25.md');
    await editor.goTo(3, 12);
    const [first = ''] = await editor.quickFixes();
    const target = /\d{4}-\d\d-\d\d/.exec(first)?.[0] ?? '';
    await editor.press('Enter');
    await onDisk(
      () => journal.files().includes(`${target}.md`) && /moved:/.test(journal.read('2026-02-25.md')),
    );
    assert.equal(
      journal.read('2026-02-25.md'),
      wednesday.replace('75min 8/10', `75min 8/10 moved:${target}`),
    );
    assert.match(
      journal.read(`${target}.md`),
      /- \[ \] #session flexibility 14:45 75min 8\/10\n {2}- hips\n/,
    );
    await editor.press('Control+z');
    await onDisk(() => !journal.files().includes(`${target}.md`));
    // The other note goes first; then this one is as it was, unsaved.
    await editor.page.locator('.view-line', { hasText: 'moved:' }).waitFor({ state: 'detached' });
    await editor.save();
    await onDisk(() => !/moved:/.test(journal.read('2026-02-25.md')));
    assert.equal(journal.read('2026-02-25.md'), wednesday);
    await editor.waitForSquiggle('warning');
  });

  it('types a reading into the questions, and is told what cannot be read', async () => {
    await editor.runCommand('Training: Add a Measurement');
    await editor.choose('right');
    const input = editor.page.locator('.quick-input-widget input[type="text"]');
    await editor.page.locator('.quick-input-message', { hasText: 'The reading, in cm' }).waitFor();
    await input.fill('nine');
    await editor.page.locator('.quick-input-message', { hasText: 'Write a number with its unit' }).waitFor();
    await input.fill('9,5deg');
    await editor.page.locator('.quick-input-message', { hasText: 'gap is measured in cm' }).waitFor();
    await editor.answer('9,5');
    await editor.choose('warm');
    await onDisk(() => /#measure/.test(journal.read('2026-02-25.md')));
    assert.match(journal.read('2026-02-25.md'), /^- #measure low-split gap 9\.5cm side:right warm$/m);
    assert.equal(journal.read('2026-02-25.md').replace(/^- #measure.*\n/m, ''), wednesday);
  });

  it('gives the goal another name everywhere, after a look at every line that changes', async () => {
    await editor.openFile('goals.md');
    await editor.goTo(1, 10);
    await editor.runCommand('Training: Rename a Goal, Metric or Routine Everywhere');
    await editor.answer('front-split');
    const rows = editor.page.locator('.quick-input-list .monaco-list-row');
    await rows.filter({ hasText: '#measure low-split gap 9.5cm' }).waitFor();
    assert.equal(await rows.count(), 2);
    await editor.press('Enter');
    await onDisk(() => /#measure front-split gap 9\.5cm/.test(journal.read('2026-02-25.md')));
    // Something else in this note was not saved yet, so it is left to the person to save it.
    await editor.page.locator('.view-line', { hasText: '#goal front-split' }).waitFor();
    await editor.save();
    await onDisk(() => /^- #goal front-split by:2026-06-14 "Front split/.test(journal.read('goals.md')));
  });

  it('asks for nothing outside this machine', () => {
    assert.deepEqual(editor.outsideRequests, []);
  });
});
