import assert from 'node:assert/strict';
import { told } from './journal-from-text';

const without = (goals: string) => told('goal-without-why', { 'goals.md': goals }, '2026-02-25');

describe('goal-without-why', () => {
  it('stands on the tag of an open goal without a reason in words', () => {
    const found = [
      'goals.md | information | #goal low-split by:2026-06-14 | The goal low-split does not say why it matters; #why keeps that for you, in private',
    ];
    assert.deepEqual(without('- #goal low-split by:2026-06-14\n- #metric gap from:14cm'), found);
    assert.deepEqual(without('- #goal low-split by:2026-06-14\n- #why'), found);
    assert.deepEqual(without('- #goal low-split by:2026-06-14\n- #why the duo act'), []);
    assert.deepEqual(without('- [x] #goal low-split by:2026-06-14'), []);
  });
});
