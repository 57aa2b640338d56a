import assert from 'node:assert/strict';
import { type LiveEditor, openLiveEditor, writeJournal } from './live-editor';

describe('a person looks back on a week', () => {
  // 2026-03-02 is a Monday: the week of the notes is over.
  const journal = writeJournal({
    'journal.md': '# Journal\n\n#athlete "Ilka"\n\n- #routine split flexibility 60min regions:hamstrings\n',
    '2026-02-23.md': '# Monday\n\n- [x] #session flexibility 18:30 60min 7/10 routine:split\n',
    '2026-02-25.md':
      '# Wednesday\n\n- [x] #session flexibility 18:30 60min 6/10 routine:split\n- #sore hamstrings 4/10\n',
    '2026-02-26.md': '# Thursday\n\n- [ ] #session strength 12:00 45min 6/10 skipped:tired\n',
    '2026-03-01.md': '# Sunday\n\n- [x] #session recovery 30min 2/10\n',
  });
  let editor: LiveEditor;

  before(async () => {
    editor = await openLiveEditor({
      folder: journal.path,
      settings: { 'trainingJournal.today': '2026-03-02', 'trainingJournal.timeZone': 'Europe/Lisbon' },
    });
    await editor.openFile('2026-03-01.md');
    await editor.waitForStatus('this week');
  });

  after(async () => {
    await editor.close();
    journal.remove();
  });

  it('finds load, recovery and kept sessions on a page of their own', async () => {
    await editor.runCommand('Training: Open Load and Recovery');
    const frame = await editor.webviewFrame();
    await frame.getByText('Load and recovery: Ilka').waitFor();
    // 60 x 7 + 60 x 6 + 30 x 2
    await frame.getByRole('cell', { name: '840', exact: true }).waitFor();
    await frame.getByText('3 of 4', { exact: true }).first().waitFor();
    await frame.getByText('not enough notes yet (1 of 12 pairs of sessions').waitFor();
  });

  it('opens the note behind a pair of sessions', async () => {
    const frame = await editor.webviewFrame();
    await frame.getByRole('button', { name: 'February 25' }).click();
    await editor.page.locator('.tab.active', { hasText: '2026-02-25.md' }).waitFor();
    await editor.page.locator('.statusbar-item', { hasText: 'Ln 3, Col' }).waitFor();
  });

  it('has the facts of the week written into its note, and adds words of their own', async () => {
    await editor.runCommand('Training: Write Only the Week’s Facts');
    await editor.page.locator('.tab.active', { hasText: '2026-W09.md' }).waitFor();
    const note = journal.files().find((file) => file.endsWith('2026-W09.md'));
    assert.ok(note);
    const text = journal.read(note);
    for (const fact of [
      '- Kept: 3 of 4 sessions, 150 min',
      '- Not done: strength, Thursday (tired)',
      '- Sore: hamstrings (4/10, Wednesday)',
      '- Load: 840',
      '## In your own words',
    ]) {
      assert.ok(text.includes(fact), `${fact} in\n${text}`);
    }
    await editor.press('Control+End');
    await editor.insert('The floor was cold.\n');
    await editor.save();
  });

  it('has them brought up to date, the own words left as they are', async () => {
    await editor.openFile('2026-02-26.md');
    await editor.press('Control+End');
    await editor.insert('\n- [x] #session hoop 19:00 30min 5/10\n');
    await editor.save();
    await editor.openFile('2026-W09.md');
    await editor.runCommand('Training: Write Only the Week’s Facts');
    const note = journal.files().find((file) => file.endsWith('2026-W09.md')) ?? '';
    for (let attempt = 0; attempt < 100 && !journal.read(note).includes('- Load: 990'); attempt += 1) {
      await editor.page.waitForTimeout(100);
    }
    const text = journal.read(note);
    assert.ok(text.includes('- Load: 990'), text);
    assert.ok(text.includes('- Kept: 4 of 5 sessions, 180 min'), text);
    assert.ok(text.endsWith('The floor was cold.\n'), text);
  });
});
