import assert from 'node:assert/strict';
import { findingsIn, told } from './journal-from-text';

const goal = (metric: string) => ({ 'goals.md': `- #goal low-split by:2026-06-14\n${metric}` });

const mismatched = (metric: string, line: string) =>
  told('unit-mismatch', { ...goal(metric), '2026-02-24.md': line }, '2026-02-24');

describe('unit-mismatch', () => {
  it('stands on a reading whose unit cannot be converted to the metric’s', () => {
    assert.deepEqual(
      mismatched('- #metric gap from:14cm to:0cm', '- #measure low-split gap 9,5deg side:left'),
      ['2026-02-24.md | warning | 9,5deg | 9,5deg does not go with the metric gap, which is measured in cm'],
    );
  });

  it('lets units of one dimension pass', () => {
    for (const [metric, reading] of [
      ['from:14cm', '95mm'],
      ['to:0cm', '3in'],
      ['to:20s', '1min'],
      ['to:40kg', '88lb'],
      ['to:180deg', '142°'],
      ['to:80%', '3/5'],
    ] as const) {
      assert.deepEqual(
        mismatched(`- #metric gap ${metric}`, `- #measure low-split gap ${reading}`),
        [],
        reading,
      );
    }
    assert.deepEqual(
      mismatched('- #metric gap', '- #measure low-split gap 9.5deg'),
      [],
      'a metric without any unit',
    );
  });

  it('proposes the same number in the metric’s unit, not for attempts', () => {
    const remedies = (reading: string) => {
      const notes = {
        ...goal('- #metric gap from:14cm to:0cm'),
        '2026-02-24.md': `- #measure low-split gap ${reading}`,
      };
      const finding = findingsIn(notes, '2026-02-24').find((one) => one.code === 'unit-mismatch');
      return [finding?.facts.suggestion, finding?.remedies];
    };
    assert.deepEqual(remedies('9,5deg'), ['9,5cm', ['replace-text']]);
    assert.deepEqual(remedies('3/5'), [undefined, []]);
  });

  it('stands on a step, and on what a metric itself says', () => {
    const inGoal = (lines: string) =>
      told('unit-mismatch', goal(lines), '2026-02-24').map((line) => line.split(' | ')[2]);
    assert.deepEqual(inGoal('- #metric gap from:14cm to:0cm noise:1s\n- [ ] #step half to:7deg'), [
      '1s',
      '7deg',
    ]);
    assert.deepEqual(inGoal('- #metric gap from:14deg to:0cm'), ['14deg']);
  });
});
