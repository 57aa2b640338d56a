import assert from 'node:assert/strict';
import { type LiveEditor, openLiveEditor, writeJournal } from './live-editor';

describe('a person begins with an empty folder', () => {
  const journal = writeJournal({ 'hours.md': '# My hours\n' });
  let editor: LiveEditor;

  before(async () => {
    editor = await openLiveEditor({
      folder: journal.path,
      width: 1500,
      height: 1000,
      settings: { 'trainingJournal.today': '2026-02-25', 'trainingJournal.timeZone': 'Europe/Lisbon' },
    });
    await editor.openViewContainer('Training Journal');
  });

  after(async () => {
    await editor.close();
    journal.remove();
  });

  const view = (name: string) =>
    editor.page.locator('.pane', { has: editor.page.locator(`.pane-header[aria-label^="${name}"]`) });

  it('is told that there is no journal yet, and what a starter journal is', async () => {
    const welcome = view('Due').locator('.welcome-view-content');
    await welcome.getByText('There is no training journal in this folder yet.').waitFor();
    await welcome.getByRole('button', { name: 'Create a Starter Journal' }).waitFor();
    await welcome.getByRole('button', { name: 'Read the Guide' }).waitFor();
    assert.equal(
      (await editor.statusBar()).some((text) => text.includes('this week')),
      false,
    );
  });

  it('creates it with the button: the goals open, and what was there stays', async () => {
    await view('Due').getByRole('button', { name: 'Create a Starter Journal' }).click();
    await editor.page.locator('.tab.active[data-resource-name="goals.md"]').waitFor();
    assert.deepEqual(journal.files(), [
      '2026-02-25.md',
      'goals.md',
      'hours.md',
      'journal.md',
      'routines.md',
      'rules.md',
    ]);
    assert.equal(journal.read('hours.md'), '# My hours\n');
    assert.match(journal.read('journal.md'), /^- #zone Europe\/Lisbon$/m);
  });

  it('sees the first session, the example goal and the week in the views', async () => {
    await view('Due').locator('.monaco-list-row', { hasText: 'recovery' }).first().waitFor();
    await view('Goals').locator('.monaco-list-row', { hasText: 'Front split, hips on the floor' }).waitFor();
    await view('Week').locator('.monaco-list-row', { hasText: 'Wednesday, February 25' }).waitFor();
    await editor.waitForStatus('0 of 1 this week');
  });

  it('finds nothing wrong in it but what the hours that are not written yet may bring', async () => {
    const problems = await editor.problems();
    assert.deepEqual(problems, []);
  });

  it('asks for nothing outside this machine', () => {
    assert.deepEqual(editor.outsideRequests, []);
  });
});
