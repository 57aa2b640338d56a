import assert from 'node:assert/strict';
import { type LiveEditor, openLiveEditor, writeJournal } from './live-editor';

describe('a person writes in a note', () => {
  const journal = writeJournal({
    'journal.md': '# Journal\n',
    '2026-02-24.md': '# Tuesday\n\nFirst words.\n',
  });
  let editor: LiveEditor;

  before(async () => {
    editor = await openLiveEditor({ folder: journal.path });
  });

  after(async () => {
    await editor.close();
    journal.remove();
  });

  it('what is typed and saved is on disk, and nothing else has changed', async () => {
    await editor.openFile('2026-02-24.md');
    await editor.goTo(3, 13);
    await editor.insert('Then.');
    await editor.save();
    assert.equal(journal.read('2026-02-24.md'), '# Tuesday\n\nFirst words.Then.\n');
    assert.deepEqual(journal.files(), ['2026-02-24.md', 'journal.md']);
  });

  it('undoes it', async () => {
    await editor.press('Control+z');
    await editor.save();
    assert.equal(journal.read('2026-02-24.md'), '# Tuesday\n\nFirst words.\n');
  });

  it('asks for nothing outside this machine', () => {
    assert.deepEqual(editor.outsideRequests, []);
  });
});
