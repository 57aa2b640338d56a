import assert from 'node:assert/strict';
import { addDays } from '../../src/notation/time/iso-date';
import { date } from './dates';
import { findingsIn, told } from './journal-from-text';

/** Sessions on successive days from 2026-01-05: x done, - skipped for being tired, ? unmarked, blank nothing. */
function notesOf(pattern: string): Record<string, string> {
  const lines: Readonly<Record<string, string>> = {
    x: '- [x] #session skill 45min 5/10\n',
    '-': '- [ ] #session skill 45min 5/10 skipped:tired\n',
    '?': '- [ ] #session skill 45min 5/10\n',
  };
  return Object.fromEntries(
    [...pattern].map((mark, index) => [
      `${addDays(date('2026-01-05'), index)}.md`,
      lines[mark] ?? 'Nothing.\n',
    ]),
  );
}
const thirty = 'xxxx-xxxxxxxx-xxxxxxxx-xxxxxxx';

describe('slipping', () => {
  it('stands on the latest session that was not done, in neutral words, with its own false alarms', () => {
    assert.deepEqual(told('slipping', notesOf(`${thirty}xx----`), '2026-02-10'), [
      '2026-02-09.md | information | #session skill 45min 5/10 skipped:tired | Fewer done lately: 0 of the last 4 planned sessions, usually 91 %. Change the plan? By chance alone this is said about once in 634 sessions',
    ]);
  });

  it('does not count today: that can still be done', () => {
    assert.equal(told('slipping', notesOf(`${thirty}xx---`), '2026-02-08').length, 0);
    assert.equal(told('slipping', notesOf(`${thirty}xx---`), '2026-02-09').length, 1);
  });

  it('says how many nobody marked', () => {
    const [line] = told('slipping', notesOf(`${thirty}xx?-?-`), '2026-02-20');
    assert.match(line ?? '', /0 of the last 4 planned sessions \(2 not marked\)/);
  });

  it('names the others, and offers a smaller week; after a break a return in steps first', () => {
    const find = (pattern: string, today: string) =>
      findingsIn(notesOf(pattern), today).find(({ code }) => code === 'slipping');
    const found = find(`${thirty}xx----`, '2026-02-10');
    assert.deepEqual(found?.remedies, ['smaller-next-week']);
    assert.deepEqual(
      found.related.map(({ note }) => note),
      ['2026-02-08.md', '2026-02-07.md', '2026-02-06.md'],
    );
    assert.deepEqual(find(`${thirty}xx${'-'.repeat(16)}`, '2026-02-22')?.remedies, [
      'ramp-back',
      'smaller-next-week',
    ]);
  });
});
