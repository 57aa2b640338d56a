import assert from 'node:assert/strict';
import { chmodSync, mkdirSync, symlinkSync } from 'node:fs';
import * as vscode from 'vscode';
import { eventually, findingIn, type ScratchJournal, scratchJournal } from '../scratch-journal';

// Today is Wednesday, 2026-02-25.
const hard = (time: string) => `- [ ] #session flexibility ${time} 75min 8/10\n`;

describe('a journal with a file that nobody wants', () => {
  let journal: ScratchJournal | undefined;
  let count = 0;

  /** Writes the journal with a Tuesday; what must still be found is found on Wednesday. */
  async function opened(notes: Readonly<Record<string, string | Uint8Array>>): Promise<ScratchJournal> {
    count += 1;
    journal = await scratchJournal(`bad-${count}`, {
      'journal.md': '#athlete "Dipper"\n#zone Europe/Lisbon\n- #rule recovery min:0/week\n',
      '2026-02-24.md': hard('18:30'),
      ...notes,
    });
    return journal;
  }

  /** Everything else works: the next note that is written is checked against the one before. */
  async function theRestWorks(): Promise<void> {
    assert.ok(journal);
    await journal.write('2026-02-25.md', hard('14:45'));
    await findingIn(journal.uri('2026-02-25.md'), 'gap-too-short', /19 h/);
    const goals = '- #goal bridge by:2026-02-30\n';
    await journal.write('goals.md', goals);
    const bad = await findingIn(journal.uri('goals.md'), 'bad-date');
    assert.equal(goals.slice(bad.range.start.character, bad.range.end.character), '2026-02-30');
  }

  afterEach(async () => {
    await journal?.remove();
    journal = undefined;
  });

  const utf16 = Uint8Array.from([0xff, 0xfe, ...[...hard('10:00')].flatMap((one) => [one.charCodeAt(0), 0])]);
  const files: Readonly<Record<string, string | Uint8Array>> = {
    'an empty note': '',
    'a note of white space': ' \n\t\n',
    'a note without an end of its last line': '- [ ] #session strength 10:00 60min',
    'a picture with the name of a note': Uint8Array.from({ length: 4096 }, (_, index) => (index * 37) % 256),
    'invalid UTF-8': Uint8Array.from([0x2d, 0x20, 0x23, 0xc3, 0x28, 0x0a]),
    'a note in UTF-16': utf16,
    'a note with NUL in it': '- [ ] #session strength\0 10:00\n',
    'an open fence': '```\n- [ ] #session strength 10:00 60min\n',
    'an open comment': '<!--\n- [ ] #session strength 10:00 60min\n',
    'front matter that is not closed': '---\ntitle: x\n- [ ] #session strength 10:00 60min\n',
    'a line of a million characters': `- [ ] #session strength ${'x'.repeat(1_000_000)}\n`,
    'a thousand nested quotes': `${'>'.repeat(1000)} - [ ] #session strength\n`,
    'five thousand tags': '- #sore hips 3/10\n'.repeat(5000),
  };
  for (const [what, text] of Object.entries(files)) {
    it(`works on beside ${what}`, async () => {
      const { uri } = await opened({ '2026-02-26.md': text });
      await theRestWorks();
      // The editor may refuse to show a file that is not text; what it shows does not stop the rest.
      await Promise.resolve(vscode.window.showTextDocument(uri('2026-02-26.md'))).catch(() => undefined);
      await findingIn(uri('2026-02-25.md'), 'gap-too-short', /19 h/);
    });
  }

  it('reads a note with CR alone, and marks the characters where the editor shows them', async () => {
    const { uri, show, write } = await opened({});
    await write('2026-02-26.md', '# Thursday\r\r- [ ] #session strength 99:00\r- [ ] #session skill 10:00\r');
    await findingIn(uri('2026-02-26.md'), 'unreadable-field');
    const { document } = await show('2026-02-26.md');
    const finding = await eventually('finding at the characters', () =>
      vscode.languages.getDiagnostics(document.uri).find(({ range }) => document.getText(range) === '99:00'),
    );
    assert.equal(finding.range.start.line, 2);
    await theRestWorks();
  });

  it('says that a date does not exist, in the name of the file too', async () => {
    const { uri } = await opened({ '2026-02-30.md': hard('10:00') });
    await findingIn(uri('2026-02-30.md'), 'bad-date');
    await theRestWorks();
  });

  it('counts a session once that a sync program left behind a second time, and names both files', async () => {
    const { uri } = await opened({ '2026-02-24 (conflicted copy).md': hard('18:30') });
    const both = [uri('2026-02-24.md'), uri('2026-02-24 (conflicted copy).md')];
    const finding = await eventually('duplicate', () =>
      both
        .flatMap((note) => vscode.languages.getDiagnostics(note).map((one) => ({ note, one })))
        .find(({ one }) => /duplicate-session/.test(JSON.stringify(one.code))),
    );
    const other = finding.one.relatedInformation?.[0]?.location.uri.toString();
    assert.deepEqual([finding.note.toString(), other].sort(), both.map(String).sort());
    await theRestWorks();
  });

  it('reads two notes of one day', async () => {
    const { uri } = await opened({
      '2026-02-26 morning.md': hard('08:00'),
      '2026-02-26 evening.md': hard('18:00'),
    });
    await findingIn(uri('2026-02-26 evening.md'), 'gap-too-short');
    await theRestWorks();
  });

  it('works on beside a folder with the name of a note, and reads the notes in it', async () => {
    const { uri } = await opened({ '2026-02-26.md/2026-02-27.md': '- [ ] #session strength 99:00\n' });
    await findingIn(uri('2026-02-26.md/2026-02-27.md'), 'unreadable-field');
    await theRestWorks();
  });

  it('works on beside links that lead in a circle, and links that lead nowhere', async () => {
    const { uri, folder } = await opened({});
    mkdirSync(uri('log').fsPath);
    symlinkSync(folder.fsPath, uri('log/round').fsPath);
    symlinkSync(uri('log').fsPath, uri('log/again').fsPath);
    symlinkSync(uri('nowhere.md').fsPath, uri('2026-02-26.md').fsPath);
    symlinkSync(uri('2026-02-27.md').fsPath, uri('2026-02-27.md').fsPath);
    await theRestWorks();
    await vscode.commands.executeCommand('trainingJournal.refresh');
    await findingIn(uri('2026-02-25.md'), 'gap-too-short', /19 h/);
  });

  it('works on beside a note that may not be read', async () => {
    // The user who may read everything reads this one, too.
    const { uri, write } = await opened({});
    await write('2026-02-26.md', hard('18:00'));
    chmodSync(uri('2026-02-26.md').fsPath, 0);
    await theRestWorks();
    chmodSync(uri('2026-02-26.md').fsPath, 0o600);
  });
});
