import assert from 'node:assert/strict';
import { told } from './journal-from-text';

const without = (goals: string) => told('goal-without-metric', { 'goals.md': goals }, '2026-02-25');

describe('goal-without-metric', () => {
  it('stands on the tag of an open goal, a remark left out', () => {
    assert.deepEqual(without('- #goal low-split by:2026-06-14 "Front split" -- soon\n- #why the act'), [
      'goals.md | information | #goal low-split by:2026-06-14 "Front split" | The goal low-split has nothing to measure it by; a goal asks for at least one #metric',
    ]);
  });

  it('is met by a metric in the goal’s scope only', () => {
    assert.deepEqual(without('- #goal low-split\n- #metric gap from:14cm'), []);
    assert.equal(without('# One\n- #goal low-split\n\n# Other\n- #metric gap from:14cm').length, 1);
  });

  it('leaves alone goals that are closed or past', () => {
    assert.deepEqual(without('- [x] #goal low-split by:2026-06-14'), []);
    assert.deepEqual(without('- #goal low-split by:2026-02-24'), []);
    assert.equal(without('- #goal low-split by:2026-02-25').length, 1);
    assert.equal(
      without('- #goal low-split from:2026-05-01').length,
      1,
      'a goal that opens later is being planned',
    );
  });
});
