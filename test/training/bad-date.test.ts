import assert from 'node:assert/strict';
import { told } from './journal-from-text';

const bad = (notes: Record<string, string>) => told('bad-date', notes, '2026-02-25');

describe('bad-date', () => {
  it('stands on a date in a field that no calendar has', () => {
    assert.deepEqual(bad({ 'goals.md': '- #goal low-split by:2026-06-31' }), [
      'goals.md | error | 2026-06-31 | 2026-06-31 is in no calendar',
    ]);
  });

  it('stands on the first line of a note whose name holds one', () => {
    const told =
      'The name of this note begins with 2026-02-30, which is in no calendar; the note belongs to no day';
    assert.deepEqual(bad({ '2026-02-30.md': '# A day\r\n- [ ] #session skill' }), [
      `2026-02-30.md | error | # A day | ${told}`,
    ]);
    assert.deepEqual(bad({ '2026-02-30 evening.md': '' }), [`2026-02-30 evening.md | error |  | ${told}`]);
    assert.equal(bad({ '2026-W54.md': 'a review' }).length, 1);
    assert.deepEqual(bad({ '2024-02-29.md': '', '2026-W53.md': '' }), []);
  });
});
