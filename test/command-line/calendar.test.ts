import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import { inShort, values } from '../planning/calendar/exports';
import { run } from './run';

const notes = {
  'journal.md': '- #athlete "Heron"\n- #zone Europe/Lisbon\n',
  '2026-03-03.md': '- [ ] #session flexibility 18:30 75min 7/10 -- a private word\n',
  '2026-03-05.md': '- [ ] #session skill skipped:work\n',
};
const asked = ['calendar', 'notes', '--from', '2026-03-02', '--to', '2026-03-08'];

describe('calendar, in a terminal', () => {
  it('prints the file and nothing else', async () => {
    const { code, out, error } = await run([...asked, '--alarm', '30'], notes);
    assert.deepEqual({ code, error }, { code: 0, error: '' });
    assert(out.startsWith('BEGIN:VCALENDAR\r\n'));
    assert(out.endsWith('END:VCALENDAR\r\n'));
    assert.deepEqual(values(out, 'DTSTART'), ['TZID=Europe/Lisbon:20260303T183000', 'VALUE=DATE:20260305']);
    assert.deepEqual(values(out, 'STATUS'), ['CONFIRMED', 'CANCELLED']);
    assert.deepEqual(values(out, 'TRIGGER'), ['-PT30M', '']);
    assert.deepEqual(values(out, 'DTSTAMP'), ['20260225T120000Z', '20260225T120000Z']);
    assert(!out.includes('private'));
    assert(!out.includes('Heron'), 'the athlete’s name does not stand in the file');
  });

  it('holds the weekly look back where it is asked for', async () => {
    const { out } = await run([...asked, '--review', 'sunday', '--review-at', '17:30'], notes);
    assert.equal(values(out, 'DTSTART').at(-1), 'TZID=Europe/Lisbon:20260308T173000');
    assert.equal(values(out, 'SUMMARY').at(-1), 'Look back on the week\\, plan the next');
    assert.equal(
      values((await run([...asked, '--review', 'Saturday'], notes)).out, 'DTSTART').at(-1),
      'TZID=Europe/Lisbon:20260307T180000',
    );
    assert.equal(values((await run(asked, notes)).out, 'DTSTART').length, 2);
  });

  for (const [words, message] of [
    [['--review', 'someday'], '"someday" is not a weekday such as sunday.'],
    [['--review', 'sunday', '--review-at', '25:00'], '"25:00" is not a time such as 18:00.'],
    [['--review-at', '18:00'], '--review-at goes with --review DAY.'],
  ] as const) {
    it(`does not understand ${words.join(' ')}`, async () => {
      const { code, error } = await run([...asked, ...words], notes);
      assert.equal(code, 2);
      assert.match(error, new RegExp(message.replace('?', '\\?')));
    });
  }

  it('follows on the last export', async () => {
    const before = (await run(asked, notes)).out;
    const files = { 'old.ics': before };
    const later = { files, now: Date.UTC(2026, 1, 26) / 60_000 };
    assert.equal((await run([...asked, '--previous', 'old.ics'], notes, later)).out, before);
    const changed = { ...notes, '2026-03-03.md': '- [ ] #session flexibility 07:00 75min 7/10\n' };
    const { out } = await run([...asked, '--previous', 'old.ics'], changed, later);
    assert.deepEqual(
      inShort(out).map((line) => line.split(' ').slice(1).join(' ')),
      ['1 confirmed 20260303T070000', '1 cancelled 20260305'],
    );
  });

  it('gives sessions the same identifiers wherever the journal lies, once the athlete has a name', async () => {
    const here = values((await run(asked, notes)).out, 'UID');
    const below = Object.fromEntries(
      Object.entries(notes).map(([path, text]) => [`elsewhere/${path}`, text]),
    );
    assert.deepEqual(values((await run(asked, below)).out, 'UID'), here);
    const wren = { ...notes, 'journal.md': '- #athlete "Wren"\n' };
    assert.notDeepEqual(values((await run(asked, wren)).out, 'UID'), here);
  });

  for (const [what, words, files, message] of [
    ['a file that is not there', ['--previous', 'none.ics'], {}, '"none.ics" cannot be read.'],
    [
      'a file of somebody else',
      ['--previous', 'work.ics'],
      { 'work.ics': 'BEGIN:VCALENDAR\r\nBEGIN:VEVENT\r\nUID:a\r\nEND:VEVENT\r\nEND:VCALENDAR' },
      '"work.ics" was not exported from this journal.',
    ],
  ] as const) {
    it(`refuses to follow on ${what}`, async () => {
      const { code, out, error } = await run([...asked, ...words], notes, { files });
      assert.deepEqual({ code, out, error }, { code: 2, out: '', error: `${message}\n` });
    });
  }

  it('is of one journal at a time', async () => {
    const several = { 'wren/journal.md': '', 'heron/journal.md': '' };
    const { code, error } = await run(asked, several);
    assert.equal(code, 2);
    assert.equal(error, 'A calendar is of one journal, and "notes" holds several: heron, wren.\n');
  });
});
