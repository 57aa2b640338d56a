import assert from 'node:assert/strict';
import * as vscode from 'vscode';
import { eventually, findingIn, type ScratchJournal, scratchJournal } from '../scratch-journal';

// Today is Wednesday, 2026-02-25.

describe('the month', () => {
  let journal: ScratchJournal;

  before(async () => {
    journal = await scratchJournal('month', {
      'journal.md': '#athlete "Dipper"\n#zone Europe/Lisbon\n',
      'zz.md': '- #rule flexibility gap:none\n',
      '2026-02-23.md': '- [x] #session flexibility 18:30 60min -- private words\n',
      '2026-02-24.md': '- [ ] #session strength 12:00 45min skipped:ill\n',
    });
    await findingIn(journal.uri('zz.md'), 'unreadable-field');
    await journal.show('journal.md');
  });

  after(async () => {
    await vscode.commands.executeCommand('workbench.action.closeAllEditors');
    await journal.remove();
  });

  it('is printed into the file that was chosen, without anything private', async () => {
    const print = (more: object) =>
      vscode.commands.executeCommand('trainingJournal.printMonth', {
        journal: journal.folder.toString(),
        file: journal.uri('wall.html').toString(),
        ...more,
      });
    await print({ extras: [] });
    const html = await journal.read('wall.html');
    assert.match(html, /<h1>February 2026<\/h1>/);
    assert.match(html, /18:30 flexibility, kept/);
    assert.doesNotMatch(html, /private|\bill\b|Dipper/);
    await print({ month: '2026-01', paper: 'letter', extras: ['name'] });
    const january = await journal.read('wall.html');
    assert.match(january, /<h1>Dipper, January 2026<\/h1>/);
    assert.match(january, /size: letter landscape/);
  });

  it('has a page of its own, named after the athlete', async () => {
    await vscode.commands.executeCommand('trainingJournal.openMonthPage', {
      journal: journal.folder.toString(),
      month: '2026-01',
    });
    await eventually('tab of the month', async () => {
      const labels = vscode.window.tabGroups.all.flatMap(({ tabs }) => tabs.map(({ label }) => label));
      return labels.includes('Month: Dipper') ? true : undefined;
    });
  });
});
