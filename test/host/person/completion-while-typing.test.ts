import assert from 'node:assert/strict';
import { type LiveEditor, openLiveEditor, writeJournal } from './live-editor';

describe('a person types the note of today', () => {
  const journal = writeJournal({
    'journal.md': '# Journal\n\n#athlete "Ilka"\n',
    'goals.md': `- #goal low-split by:2026-06-14 "Front split on the floor"
- #metric gap from:14cm to:0cm
- #need flexibility 2/week 75min 7/10 routine:split-evening
- #routine split-evening flexibility 75min
`,
    '2026-02-24.md': '- [x] #session flexibility 18:30 75min 8/10\n#measure low-split gap 9.5cm\n',
    '2026-02-26.md': '# Thursday\n\n',
  });
  let editor: LiveEditor;

  before(async () => {
    editor = await openLiveEditor({
      folder: journal.path,
      settings: { 'trainingJournal.today': '2026-02-26', 'trainingJournal.timeZone': 'Europe/Lisbon' },
    });
    await editor.openFile('2026-02-26.md');
    await editor.waitForStatus('this week');
    await editor.goTo(3);
  });

  after(async () => {
    await editor.close();
    journal.remove();
  });

  /** The list of proposals, when `label` is in it. */
  const proposed = (label: string) =>
    editor.page
      .locator('.suggest-widget.visible .monaco-list-row')
      .filter({ hasText: label })
      .first()
      .waitFor();

  it('is offered tags behind #, and writes a session with its box', async () => {
    await editor.type('#');
    await proposed('#measure');
    await editor.type('se');
    await proposed('#session');
    await editor.press('Enter');
    await proposed('for:low-split');
    await editor.save();
    assert.equal(journal.read('2026-02-26.md'), '# Thursday\n\n- [ ] #session ');
  });

  it('takes the session that a goal asks for, with the time it usually has', async () => {
    await editor.press('Enter');
    await editor.press('Escape');
    await editor.save();
    assert.equal(
      journal.read('2026-02-26.md'),
      '# Thursday\n\n- [ ] #session flexibility 18:30 75min 7/10 for:low-split routine:split-evening',
    );
  });

  it('is offered the next reading in the unit of the last', async () => {
    await editor.press('Control+End');
    await editor.press('Enter');
    await editor.type('#measure low-split ');
    await proposed('9.5cm');
    await editor.press('Escape');
  });
});
