import assert from 'node:assert/strict';
import * as vscode from 'vscode';
import { fileBefore, writeCalendar } from '../../../src/editor/commands/write-calendar';
import type { OpenJournal } from '../../../src/editor/open-journal';
import { openJournalFile } from '../../../src/journal/calendar-file';
import { JournalIndex } from '../../../src/journal/journal-index';
import { type IsoDate, parseIsoDate } from '../../../src/notation/time/iso-date';
import { type ScratchJournal, scratchJournal } from '../scratch-journal';

function date(text: string): IsoDate {
  const found = parseIsoDate(text);
  assert(found);
  return found;
}

/** The journal in a folder as commands see it, with these notes. */
function journalIn(folder: vscode.Uri, notes: Readonly<Record<string, string>>): OpenJournal {
  const journal = new JournalIndex();
  for (const [path, text] of Object.entries(notes)) journal.replace(openJournalFile(path, text));
  return {
    id: folder.toString(),
    uri: folder,
    title: 'Dipper',
    journal,
    settings: {
      alarmMinutes: 20,
      recoveryChance: 0.2,
      sessionLenses: true,
      timeOfDay: 'earlier',
      review: { pain: false, why: false, day: 7 },
      findings: { enabled: true, weeksBefore: 1, weeksAfter: 2 },
    },
    today: () => date('2026-02-25'),
    zone: () => 'Europe/Lisbon',
    uriOf: (note) => vscode.Uri.joinPath(folder, note),
  };
}

describe('an exported calendar in the file system', () => {
  let scratch: ScratchJournal | undefined;
  let count = 0;
  const week = { first: date('2026-02-23'), last: date('2026-03-01') };
  const session = { '2026-02-26.md': '- [ ] #session skill 18:30 60min\n' };

  async function folder(files: Readonly<Record<string, string>> = {}): Promise<ScratchJournal> {
    count += 1;
    scratch = await scratchJournal(`calendar-${count}`, { 'journal.md': '', ...files });
    return scratch;
  }

  afterEach(async () => {
    await scratch?.remove();
    scratch = undefined;
  });

  async function write(open: OpenJournal, target: vscode.Uri) {
    const before = await fileBefore(open, target);
    return { contents: before.contents, ...(await writeCalendar(open, week, target, before)) };
  }

  it('is created, follows on itself, and tells what was cancelled', async () => {
    const { folder: root, uri, read } = await folder();
    const target = uri('training.ics');
    assert.deepEqual(await write(journalIn(root, session), target), {
      contents: 'nothing',
      standing: 1,
      cancelled: 0,
    });
    const first = await read('training.ics');
    assert.match(first, /TRIGGER:-PT20M/);
    assert.deepEqual(await write(journalIn(root, session), target), {
      contents: 'this-journal',
      standing: 1,
      cancelled: 0,
    });
    assert.equal(await read('training.ics'), first);
    assert.deepEqual(await write(journalIn(root, { 'journal.md': '' }), target), {
      contents: 'this-journal',
      standing: 0,
      cancelled: 1,
    });
    assert.match(await read('training.ics'), /SEQUENCE:1\r\nSTATUS:CANCELLED/);
  });

  it('is not written where there is nothing to export', async () => {
    const { folder: root, uri, exists } = await folder();
    assert.deepEqual(await write(journalIn(root, { 'journal.md': '' }), uri('training.ics')), {
      contents: 'nothing',
      standing: 0,
      cancelled: 0,
    });
    assert.equal(await exists('training.ics'), false);
  });

  it('is told from a file of something else before that is written over', async () => {
    const { folder: root, uri } = await folder({ 'work.ics': 'BEGIN:VCALENDAR\r\nEND:VCALENDAR\r\n' });
    assert.equal((await fileBefore(journalIn(root, session), uri('work.ics'))).contents, 'something-else');
    assert.equal((await fileBefore(journalIn(root, session), uri('journal.md'))).contents, 'nothing');
  });
});
