import assert from 'node:assert/strict';
import { findingsIn, told } from './journal-from-text';

const notes = {
  'goals.md': '- #goal low-split by:2026-06-14\n- #why the act\n- #metric gap from:14cm to:0cm',
  'summer.md': '- #goal low-split by:2026-08-30',
};

describe('duplicate-goal', () => {
  it('stands on the name of the later goal and names the first', () => {
    assert.deepEqual(told('duplicate-goal', notes, '2026-02-24'), [
      'summer.md | warning | low-split | goals.md has a goal low-split already; this one is not counted',
    ]);
    const found = findingsIn(notes, '2026-02-24');
    assert.deepEqual(
      found.map((finding) => finding.code),
      ['duplicate-goal'],
      'the one that is not counted is not asked for a metric or a why',
    );
    assert.deepEqual(found[0]?.related[0]?.note, 'goals.md');
  });

  it('finds two in one note', () => {
    assert.equal(told('duplicate-goal', { 'goals.md': '- #goal one\n- #goal one' }, '2026-02-24').length, 1);
  });
});
