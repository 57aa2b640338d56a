import assert from 'node:assert/strict';
import { findingsIn, told } from './journal-from-text';

const goals = { 'goals.md': '- #goal low-split by:2026-06-14\n- #goal handstand by:2026-07-14' };

const unknown = (line: string) => told('unknown-goal', { ...goals, '2026-02-24.md': line }, '2026-02-24');

describe('unknown-goal', () => {
  it('stands on the name in a session, a measurement or an event', () => {
    assert.deepEqual(unknown('- [x] #session flexibility for:low-split,planche'), [
      '2026-02-24.md | warning | planche | The journal has no goal planche',
    ]);
    assert.deepEqual(unknown('- #measure planche 20s'), [
      '2026-02-24.md | warning | planche | The journal has no goal planche',
    ]);
    assert.deepEqual(unknown('- #event 2026-05-30 "show" for:planche'), [
      '2026-02-24.md | warning | planche | The journal has no goal planche',
    ]);
    assert.deepEqual(unknown('- [x] #session flexibility for:low-split,handstand'), []);
  });

  it('knows goals that are closed or over', () => {
    assert.deepEqual(
      told(
        'unknown-goal',
        {
          'goals.md': '- [x] #goal bridge by:2025-01-01',
          '2026-02-24.md': '- [x] #session skill for:bridge',
        },
        '2026-02-24',
      ),
      [],
    );
  });

  it('proposes a goal of nearly that name', () => {
    const found = findingsIn({ ...goals, '2026-02-24.md': '- #measure low-spilt 9cm' }, '2026-02-24');
    const finding = found.find((one) => one.code === 'unknown-goal');
    assert.deepEqual(finding?.facts, { goal: 'low-spilt', suggestion: 'low-split' });
    assert.deepEqual(finding.remedies, ['replace-text', 'add-goal']);
  });
});
