import assert from 'node:assert/strict';
import { told } from './journal-from-text';

const without = (goals: string) => told('goal-without-date', { 'goals.md': goals }, '2026-02-25');

describe('goal-without-date', () => {
  it('stands on the tag of an open goal without by:', () => {
    assert.deepEqual(without('- #goal low-split from:2026-01-01\n- #why the act\n- #metric gap from:14cm'), [
      'goals.md | information | #goal low-split from:2026-01-01 | The goal low-split has no date; by: gives it one, and with it a pace',
    ]);
    assert.deepEqual(without('- #goal low-split by:2026-06-14'), []);
    assert.deepEqual(without('- [x] #goal low-split'), []);
  });

  it('is told of a goal whose date cannot be read, too', () => {
    assert.equal(without('- #goal low-split by:soon').length, 1);
  });
});
