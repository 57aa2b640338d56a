import assert from 'node:assert/strict';
import * as vscode from 'vscode';
import {
  eventually,
  findingIn,
  type ScratchJournal,
  scratchJournal,
  workspaceRoot,
} from '../scratch-journal';

// Today is Wednesday, 2026-02-25: the week that is just over is the eighth.

async function set(name: string, value: unknown): Promise<void> {
  const settings = vscode.workspace.getConfiguration('trainingJournal', workspaceRoot());
  await settings.update(name, value, vscode.ConfigurationTarget.Workspace);
}

describe('the review of a week, written', () => {
  let journal: ScratchJournal;
  const own = '# The week\n\nWords of mine.\n';

  before(async () => {
    journal = await scratchJournal('review', {
      'journal.md': '#athlete "Dipper"\n#zone Europe/Lisbon\n- #rule flexibility gap:none\n',
      'goals.md': '- #goal low-split by:2026-06-14\n- #why the song nobody knows\n- #metric gap to:0cm\n',
      '2026-02-16.md': '- [x] #session flexibility 18:30 75min 7/10\n- #pain left-wrist 5/10\n',
      '2026-W08.md': own,
    });
    await findingIn(journal.uri('journal.md'), 'unreadable-field');
    await journal.show('journal.md');
  });

  after(async () => {
    for (const name of ['review.pain', 'review.why']) await set(name, undefined);
    await journal.remove();
  });

  const review = async (): Promise<string> => {
    await vscode.commands.executeCommand('trainingJournal.writeWeekReview', journal.folder.toString());
    return journal.read('2026-W08.md');
  };

  it('holds the facts behind the own words, and nothing private', async () => {
    const text = await eventually('review', async () => {
      const written = await review();
      return written === own ? undefined : written;
    });
    assert.ok(
      text.startsWith(`${own}\n<!-- training journal: facts of 2026-W08 -->\n\n- Kept: 1 of 1`),
      text,
    );
    assert.doesNotMatch(text, /wrist|song/);
  });

  it('names pain and private reasons once the settings ask for it, and never after', async () => {
    await set('review.pain', true);
    await set('review.why', true);
    const asked = await eventually('private facts', async () => {
      const text = await review();
      return text.includes('song') && text.includes('wrist') ? text : undefined;
    });
    assert.match(asked, /^- Pain: left-wrist \(5\/10, Monday\)$/m);
    assert.match(asked, /^- low-split: the song nobody knows$/m);
    for (const name of ['review.pain', 'review.why']) await set(name, undefined);
    const text = await eventually('end of the private facts', async () => {
      const written = await review();
      return /song|wrist/.test(written) ? undefined : written;
    });
    assert.ok(text.startsWith(own), text);
  });
});
