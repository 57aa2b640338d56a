import assert from 'node:assert/strict';
import { copyJournal, type LiveEditor, openLiveEditor, writeJournal } from './live-editor';

/** Waits until `holds`, and fails with `what` when it never does. */
async function until(what: string, holds: () => boolean): Promise<void> {
  for (let tries = 0; tries < 150; tries += 1) {
    if (holds()) return;
    await new Promise((resolve) => setTimeout(resolve, 200));
  }
  assert.fail(what);
}

describe('a person mends a finding with the quick fix', () => {
  const journal = writeJournal({
    'journal.md': '# Journal\n',
    '2026-02-24.md': '# Tuesday\n\n- [x] #session flexibility 18:30 75min 8/10\n',
    '2026-02-25.md': '# Wednesday\n\n\n\nSome words.\n',
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

  it('types a session too close to yesterday’s, and is offered the first day that breaks nothing', async () => {
    await editor.openFile('2026-02-25.md');
    await editor.goTo(3);
    await editor.type('- [ ] #session flexibility 18:30 75min 8/10');
    await editor.press('Escape');
    await editor.waitForSquiggle('warning');
    await editor.save();
    await editor.waitForProblem('22 h 45 min after');
    await editor.openFile('2026-02-25.md');
    await editor.goTo(3, 12);
    const fixes = await editor.quickFixes();
    assert.match(fixes[0] ?? '', /Move.*2026-02-2[78]/);
    await editor.press('Escape');
  });

  it('takes it: the line says where it went, and the session stands there on disk', async () => {
    await editor.goTo(3, 12);
    await editor.applyQuickFix(/^Move/);
    await editor.waitForNoProblem('22 h 45 min after');
    await until('the moved session is on disk', () =>
      journal
        .files()
        .some(
          (file) =>
            /^2026-02-2[78]\.md$/.test(file) && journal.read(file).includes('#session flexibility 18:30'),
        ),
    );
  });

  it('finds the word moved: in the old note, and every other word as it was', async () => {
    await editor.openFile('2026-02-25.md');
    await editor.save();
    assert.match(
      journal.read('2026-02-25.md'),
      /^# Wednesday\n\n- \[ \] #session flexibility 18:30 75min 8\/10 moved:2026-02-2[78]\n\nSome words\.\n$/,
    );
  });
});

describe('a person writes next week’s notes of the sample athlete', () => {
  const journal = copyJournal('sample-journal/athlete');
  const nextWeek = ['02', '03', '04', '05', '06', '07', '08'].map((day) => `2026-03-${day}.md`);
  const written = () => journal.files().filter((file) => nextWeek.some((note) => file.endsWith(note)));
  let editor: LiveEditor;

  before(async () => {
    editor = await openLiveEditor({
      folder: journal.path,
      settings: { 'trainingJournal.today': '2026-02-26' },
    });
    await editor.openFile('2026-02-26.md');
    await editor.waitForStatus('this week');
  });

  after(async () => {
    await editor.close();
    journal.remove();
  });

  it('is shown every day before anything is written, and writes nothing on Escape', async () => {
    await editor.runCommand('Training: Write Next Week’s Notes');
    await editor.page.locator('.quick-input-list .monaco-list-row').first().waitFor();
    await editor.press('Escape');
    await editor.page.locator('.quick-input-widget').waitFor({ state: 'hidden' });
    assert.deepEqual(written(), []);
  });

  it('presses Enter, and finds seven notes on disk, the trip’s days without a session', async () => {
    await editor.runCommand('Training: Write Next Week’s Notes');
    await editor.page.locator('.quick-input-list .monaco-list-row').first().waitFor();
    await editor.press('Enter');
    await until('seven notes are on disk', () => written().length === 7);
    for (const day of ['2026-03-06.md', '2026-03-07.md']) {
      const note = written().find((file) => file.endsWith(day));
      assert.ok(note);
      assert.equal(journal.read(note).includes('#session'), false);
    }
    // Juno has the key on Tuesdays from 18:00 to 20:00; the coach's hours are Wednesday's, 19:30 to 21:30.
    const lines = (day: string) =>
      journal.read(written().find((file) => file.endsWith(day)) ?? '').match(/^- \[ \] #session .*$/gm) ?? [];
    assert.match(lines('2026-03-03.md').join(), /^- \[ \] #session skill 1[89]:\d\d .*with:juno/);
    assert.match(
      lines('2026-03-04.md').join(),
      /^- \[ \] #session flexibility (19:[3-5]\d|20:[0-3]\d) .*with:coach/,
    );
    const sessions = written().flatMap((file) => journal.read(file).match(/- \[ \] #session \w+/g) ?? []);
    assert.equal(sessions.length, 7);
  });

  it('runs it again, and nothing is added', async () => {
    const before = written().map((file) => journal.read(file));
    await editor.runCommand('Training: Write Next Week’s Notes');
    await editor.waitForNotice('nothing to add');
    assert.deepEqual(
      written().map((file) => journal.read(file)),
      before,
    );
  });

  it('takes all of it back with one undo', async () => {
    await editor.page.locator('.tab.active[data-resource-name="2026-03-02.md"]').waitFor();
    await editor.page.locator('.editor-group-container.active .monaco-editor .view-lines').click();
    await editor.press('Control+z');
    const dialog = editor.page.locator('.monaco-dialog-box');
    await dialog.waitFor({ timeout: 8000 }).catch(() => undefined);
    if (await dialog.isVisible()) {
      await editor.page.locator('.monaco-dialog-box .monaco-button').first().click();
    }
    await until('the seven notes are gone', () => written().length === 0);
  });

  it('asks for nothing outside this machine', () => assert.deepEqual(editor.outsideRequests, []));
});
