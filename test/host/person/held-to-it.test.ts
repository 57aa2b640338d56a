import assert from 'node:assert/strict';
import { type LiveEditor, openLiveEditor, writeJournal } from './live-editor';

describe('a person prints, shares, and comes back after three weeks', () => {
  // 2026-02-25 is a Wednesday. The last session that was done lies in January.
  const done = ['01-05', '01-08', '01-12', '01-15', '01-19', '01-22', '01-26', '01-29'];
  const journal = writeJournal({
    'journal.md': '# Journal\n\n#athlete "Ilka"\n#zone Europe/Lisbon\n',
    'goals.md':
      '- #goal low-split by:2026-06-14 "Front split on the floor"\n- #why secret reason\n- #metric gap from:14cm to:0cm\n- #need flexibility 2/week 60min 8/10\n',
    '2026-02-23.md': '- [ ] #session flexibility 18:30 60min skipped:travel -- secret remark\n',
    ...Object.fromEntries(
      done.map((day) => [`2026-${day}.md`, '- [x] #session flexibility 18:30 60min 8/10\n']),
    ),
  });
  let editor: LiveEditor;

  before(async () => {
    editor = await openLiveEditor({
      folder: journal.path,
      settings: { 'trainingJournal.today': '2026-02-25', 'trainingJournal.timeZone': 'Europe/Lisbon' },
    });
    await editor.openFile('goals.md');
    await editor.waitForStatus('this week');
  });

  after(async () => {
    await editor.close();
    journal.remove();
  });

  const title = (text: string) =>
    editor.page.locator('.quick-input-widget .quick-input-title', { hasText: text }).waitFor();

  const row = (text: string | RegExp) =>
    editor.page.locator('.quick-input-list .monaco-list-row', { hasText: text }).first();

  /** Waits until the disk is as wished; fails by the clock of the test. */
  const onDisk = async (isAsWished: () => boolean) => {
    while (!isAsWished()) await editor.page.waitForTimeout(50);
  };

  /** Takes the place that is proposed for a file. */
  const saveAsProposed = async (file: string) => {
    const place = editor.page.locator('.quick-input-widget input[type="text"]');
    await editor.page.waitForFunction(
      (name) =>
        document
          .querySelector<HTMLInputElement>('.quick-input-widget input[type="text"]')
          ?.value.endsWith(name),
      file,
    );
    await place.press('Enter');
    await onDisk(() => journal.files().includes(file) && journal.read(file).endsWith('</html>\n'));
    return journal.read(file);
  };

  it('prints the month: a sheet with nothing private on it', async () => {
    await editor.runCommand('Training: Print the Month');
    await title('What stands on the sheet');
    await editor.press('Enter');
    const sheet = await saveAsProposed('month-2026-02.html');
    assert.match(sheet, /February 2026/);
    assert.doesNotMatch(sheet, /secret|Ilka/);
    await editor.waitForNotice('month-2026-02.html is written');
  });

  it('shares the week as a page to print, which is what the preview showed', async () => {
    await editor.runCommand('Training: Write a Note to Share');
    await title('What do you share?');
    await row('This week').click();
    await title('Private: what may leave?');
    await editor.press('Enter');
    await title('The editor shows exactly what will leave');
    await editor.page.locator('.view-line', { hasText: 'Training in the week 2026-W09' }).waitFor();
    await row('Save it as a page to print').click();
    const page = await saveAsProposed('shared 2026-W09.html');
    assert.match(page, /<h1>Training in the week 2026-W09<\/h1>/);
    assert.match(page, /18:30 flexibility/);
    assert.doesNotMatch(page, /secret|Ilka/);
  });

  it('comes back in steps: the weeks are shown with their limits, and written as notes', async () => {
    await editor.runCommand('Training: Get Going Again in Steps');
    await row(/^\s*4 weeks/).click();
    await title('Back in steps after 27 days without a session');
    await row('flexibility').waitFor();
    await editor.page.locator('.quick-input-widget input[type="text"]').press('Enter');
    await onDisk(() => journal.files().filter((file) => /^2026-03-\d\d\.md$/.test(file)).length >= 28);
    const weeks = journal.files().filter((file) => /^2026-03-0[2-8]\.md$/.test(file));
    const first = weeks.map((file) => journal.read(file)).join('');
    assert.equal(first.match(/#session flexibility/g)?.length, 1);
    assert.doesNotMatch(first, /#session flexibility.* [7-9]\/10/);
  });

  it('asks for nothing outside this machine', () => {
    assert.deepEqual(editor.outsideRequests, []);
  });
});
