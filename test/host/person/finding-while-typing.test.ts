import assert from 'node:assert/strict';
import { type LiveEditor, openLiveEditor, writeJournal } from './live-editor';

describe('a person types a flexibility session too soon after another', () => {
  const journal = writeJournal({
    'journal.md': '# Journal\n\n#athlete "Ilka"\n',
    '2026-02-24.md': '# Tuesday\n\n- [x] #session flexibility 18:30 75min 8/10\n',
    '2026-02-25.md': '# Wednesday\n\n',
  });
  let editor: LiveEditor;

  before(async () => {
    editor = await openLiveEditor({
      folder: journal.path,
      settings: { 'trainingJournal.today': '2026-02-25', 'trainingJournal.timeZone': 'Europe/Lisbon' },
    });
  });

  after(async () => {
    await editor.close();
    journal.remove();
  });

  it('sees the wavy line at once, unsaved, and reads the hours in its message', async () => {
    await editor.openFile('2026-02-25.md');
    await editor.goTo(3);
    await editor.type('- [ ] #session flexibility 14:45 75min 8/10');
    await editor.press('Escape');
    await editor.waitForSquiggle('warning');
    const problem = await editor.waitForProblem('19 h after');
    assert.match(problem, /48 h/);
    assert.match(problem, /gap-too-short/);
    assert.equal(journal.read('2026-02-25.md'), '# Wednesday\n\n');
  });

  it('asks for nothing outside this machine', () => {
    assert.deepEqual(editor.outsideRequests, []);
  });
});
