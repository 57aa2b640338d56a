import assert from 'node:assert/strict';
import { summariseWeek } from '../../src/training/week-summary';
import { date, week } from './dates';
import { journalFromNotes, told } from './journal-from-text';

const copied = {
  '2026-02-24.md': '- [x] #session flexibility 18:30 75min 6/10 -- good evening',
  '2026-02-24 (conflicted copy).md': '- [x] #session flexibility 18:30 75min 6/10',
};

describe('duplicate-session', () => {
  it('stands on the copy and names both files', () => {
    assert.deepEqual(told('duplicate-session', copied, '2026-02-25'), [
      '2026-02-24 (conflicted copy).md | information | #session flexibility 18:30 75min 6/10 | 2026-02-24.md and 2026-02-24 (conflicted copy).md both hold this flexibility session; it counts once',
    ]);
  });

  it('counts once, overlaps nothing and breaks no gap', () => {
    assert.equal(summariseWeek(journalFromNotes(copied), week('2026-W09'), date('2026-02-25')).done, 1);
    assert.deepEqual(told('overlapping-sessions', copied, '2026-02-25'), []);
    assert.deepEqual(told('gap-too-short', copied, '2026-02-25'), []);
  });
});
