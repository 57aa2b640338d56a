import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import { newDayNoteText } from '../../src/planning/day-note';
import { newDayNotePath, noteForDay } from '../../src/planning/day-note-path';
import { date, journalOf } from './journal-of';

function pathAfter(paths: readonly string[], day: string, root = ''): string {
  return newDayNotePath(journalOf(Object.fromEntries(paths.map((path) => [path, 'words'])), root), date(day));
}

describe('where a new day note goes', () => {
  for (const [name, paths, day, expected] of [
    ['the journal’s folder when there are no day notes', ['journal.md'], '2026-03-01', '2026-03-01.md'],
    ['the journal’s folder', ['2026-02-24.md'], '2026-03-01', '2026-03-01.md'],
    ['a folder of the year', ['2025/2025-12-30.md'], '2026-03-01', '2026/2026-03-01.md'],
    ['a folder of year and month', ['2026/02/2026-02-24.md'], '2026-03-01', '2026/03/2026-03-01.md'],
    ['a folder YYYY-MM', ['2026-02/2026-02-24.md'], '2026-03-01', '2026-03/2026-03-01.md'],
    ['YYYY/YYYY-MM', ['2026/2026-02/2026-02-24.md'], '2027-03-01', '2027/2027-03/2027-03-01.md'],
    ['a folder of the week', ['2026-W09/2026-02-24.md'], '2026-03-02', '2026-W10/2026-03-02.md'],
    ['a folder that stays', ['diary/days/2026-02-24.md'], '2026-03-01', 'diary/days/2026-03-01.md'],
    [
      'a folder that stays, then the month',
      ['diary/2026-02/2026-02-24.md'],
      '2026-03-01',
      'diary/2026-03/2026-03-01.md',
    ],
    ['a bare number that is no month of a year', ['02/2026-02-24.md'], '2026-03-01', '02/2026-03-01.md'],
    ['an old year that stays', ['2024/2026-02-24.md'], '2026-03-01', '2024/2026-03-01.md'],
    [
      'where most of the newest are',
      ['old/2025-01-01.md', '2026/2026-02-20.md', '2026/2026-02-21.md', '2026-02-22.md'],
      '2026-03-01',
      '2026/2026-03-01.md',
    ],
    [
      'the newest, when one stands against one',
      ['2026/2026-02-20.md', '2026-02-22.md'],
      '2026-03-01',
      '2026-03-01.md',
    ],
  ] as const) {
    it(`${name}: ${expected}`, () => assert.equal(pathAfter(paths, day), expected));
  }

  it('counts folders from the journal’s own, even when that is named like a year', () => {
    assert.equal(
      pathAfter(['2026/heron/2026-12/2026-12-30.md'], '2027-01-02', '2026/heron'),
      '2026/heron/2027-01/2027-01-02.md',
    );
    assert.equal(pathAfter(['heron/journal.md'], '2027-01-02', 'heron'), 'heron/2027-01-02.md');
  });
});

describe('which of several notes of a day takes a session', () => {
  it('the one that has a session', () => {
    const journal = journalOf({ '2026-02-24.md': 'words', '2026-02-24 evening.md': '- [ ] #session skill' });
    assert.equal(noteForDay(journal, date('2026-02-24'))?.path, '2026-02-24 evening.md');
  });

  it('otherwise the one with the plain name, not a copy', () => {
    const journal = journalOf({ '2026-02-24 (conflicted copy).md': 'words', '2026-02-24.md': 'words' });
    assert.equal(noteForDay(journal, date('2026-02-24'))?.path, '2026-02-24.md');
  });

  it('none when the day has none', () => {
    assert.equal(noteForDay(journalOf({ 'journal.md': '' }), date('2026-02-24')), undefined);
  });
});

describe('the text of a new day note', () => {
  it('is a heading, then what stands in it', () => {
    assert.equal(
      newDayNoteText(
        date('2026-02-24'),
        ['- [ ] #session skill\n  - mounts', '- [ ] #session recovery'],
        '\n',
      ),
      '# Tuesday, 2026-02-24\n\n- [ ] #session skill\n  - mounts\n- [ ] #session recovery\n',
    );
    assert.equal(newDayNoteText(date('2026-03-01'), [], '\r\n'), '# Sunday, 2026-03-01\r\n');
  });
});
