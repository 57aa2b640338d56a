import assert from 'node:assert/strict';
import { type LiveEditor, openLiveEditor, writeJournal } from './live-editor';

const secret = 'I stopped choosing songs around a leg';

describe('a person opens the goal page', () => {
  const journal = writeJournal({
    'journal.md': '# Journal\n\n#athlete "Ilka"\n',
    'goals.md': `- #goal low-split by:2026-06-14 "Front split on the floor"
- #why ${secret}
- #metric gap from:14cm to:0cm
`,
    '2026-02-10.md': '#measure low-split gap 11cm\n',
    '2026-02-24.md': '# Tuesday\n\n#measure low-split gap 9.5cm\n',
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
  });

  after(async () => {
    await editor.close();
    journal.remove();
  });

  /** Waits until the page says `words`, and returns its frame. */
  const pageWith = async (words: string) => {
    const frame = await editor.webviewFrame();
    await frame.getByText(words).first().waitFor();
    return frame;
  };

  it('finds its chart drawn, and the latest reading in words', async () => {
    await editor.runCommand('Training: Open the Goal Page');
    const frame = await pageWith('Latest: 9.5 cm on Tuesday, February 24; 9.5 cm to go.');
    const drawn = await frame.evaluate(() => {
      const canvas = document.querySelector('canvas');
      const data = canvas?.getContext('2d')?.getImageData(0, 0, canvas.width, canvas.height).data;
      return data
        ? Array.from(data)
            .filter((_, index) => index % 4 === 3)
            .filter((opacity) => opacity > 0).length
        : 0;
    });
    assert.ok(drawn > 1000, `${drawn} pixels are drawn`);
  });

  it('reads the private reason only when asked for', async () => {
    const frame = await editor.webviewFrame();
    assert.equal((await frame.content()).includes(secret), false);
    await frame.getByRole('button', { name: 'Show why' }).click();
    await frame.getByText(secret).waitFor();
  });

  it('opens the note of a reading, at its line', async () => {
    const frame = await editor.webviewFrame();
    await frame.getByRole('button', { name: 'February 24' }).click();
    await editor.page.locator('.tab.active', { hasText: '2026-02-24.md' }).waitFor();
    await editor.page.locator('.statusbar-item', { hasText: 'Ln 3, Col 1' }).waitFor();
  });

  it('sees what is typed in the note on the page, unsaved', async () => {
    await editor.press('Control+End');
    await editor.insert('#measure low-split gap 9cm\n#measure low-split gap 9cm\n');
    await pageWith('Latest: 9.2 cm on Tuesday, February 24, the mean of 3 readings');
    assert.equal(journal.read('2026-02-24.md'), '# Tuesday\n\n#measure low-split gap 9.5cm\n');
  });

  it('finds it again after the editor was loaded anew, without the private reason', async () => {
    await editor.reload();
    const frame = await pageWith('Latest: 9');
    assert.equal((await frame.content()).includes(secret), false);
    await frame.getByRole('button', { name: 'Show why' }).waitFor();
  });
});
