import assert from 'node:assert/strict';
import { copyJournal, type LiveEditor, openLiveEditor } from './live-editor';

/** Waits until `holds`, and fails with `what` when it never does. */
async function until(what: string, holds: () => boolean): Promise<void> {
  for (let tries = 0; tries < 150; tries += 1) {
    if (holds()) return;
    await new Promise((resolve) => setTimeout(resolve, 200));
  }
  assert.fail(what);
}

describe('a person reviews the week of the sample on a Sunday, and plans the next', () => {
  const journal = copyJournal('sample-journal/athlete');
  const note = 'weeks/2026-W09.md';
  const days = ['02', '03', '04', '05', '06', '07', '08'].map((day) => `log/block-2/2026-03-${day}.md`);
  const files = journal.files();
  let editor: LiveEditor;
  /** Clicks and key presses so far, from the reminder to the last one that writes. */
  let actions = 0;

  before(async () => {
    editor = await openLiveEditor({
      folder: journal.path,
      settings: { 'trainingJournal.today': '2026-03-01' },
    });
  });

  after(async () => {
    await editor.close();
    journal.remove();
  });

  it('does all of it in ten clicks at the most, and nothing is written before the last', async () => {
    await editor.waitForStatus('Look back on week 2026-W09');
    const click = async (selector: string, text: string | RegExp): Promise<void> => {
      await editor.page.locator(selector, { hasText: text }).first().click();
      actions += 1;
    };
    const title = (text: string | RegExp) =>
      editor.page.locator('.quick-input-title', { hasText: text }).waitFor();
    const row = (text: string | RegExp) => click('.quick-input-list .monaco-list-row', text);

    await click('.statusbar-item', 'Look back on week 2026-W09');
    await title(/^1 of 3: what happened/);
    await row('Next: 2 proposals');
    await title(/^2 of 3/);
    await row('Measure handstand hold next week');
    await editor.page.locator('.quick-input-list .monaco-list-row', { hasText: 'taken' }).first().waitFor();
    await row('Next: plan the week');
    await title(/^3 of 3: .*nothing left out/);
    assert.deepEqual(journal.files(), files);
    await row('Write the facts of 2026-W09');
    await until('the facts are written', () => journal.files().includes(note) && journal.read(note) !== '');
    assert.ok(actions <= 10, `${actions} clicks`);
    assert.match(journal.read(note), /^- Kept: 2 of 6 sessions, 135 min$/m);
    const week = days.map((path) => journal.read(path));
    assert.equal(week.filter((text) => text.includes('- [ ] Measure handstand hold\n')).length, 1);
    assert.ok(week.filter((text) => text.includes('#session')).length >= 4);
  });

  it('sees no reminder any more, and takes all of it back with one undo', async () => {
    await editor.page.locator('.statusbar-item', { hasText: 'Look back' }).waitFor({ state: 'hidden' });
    await editor.page.locator('.tab.active[data-resource-name="2026-W09.md"]').waitFor();
    await editor.page.locator('.editor-group-container.active .monaco-editor.focused').waitFor();
    await editor.press('Control+z');
    await until('everything is as before', () => journal.files().join() === files.join());
  });
});
