import assert from 'node:assert/strict';
import { told } from './journal-from-text';

const goals = {
  'goals.md': [
    '- #goal low-split by:2026-06-14',
    '- #metric gap from:14cm to:0cm',
    '- #goal handstand by:2026-07-14',
    '- #metric hold from:5s to:20s',
    '- #metric straight from:0% to:80%',
  ].join('\n'),
};

const unknown = (line: string) => told('unknown-metric', { ...goals, '2026-02-24.md': line }, '2026-02-24');

describe('unknown-metric', () => {
  it('stands on the name in a measurement', () => {
    assert.deepEqual(unknown('- #measure low-split gapp 9.5cm'), [
      '2026-02-24.md | warning | gapp | The goal low-split has no metric gapp; did you mean gap?',
    ]);
    assert.deepEqual(unknown('- #measure low-split hold 9s'), [
      '2026-02-24.md | warning | hold | The goal low-split has no metric hold',
    ]);
    assert.deepEqual(unknown('- #measure low-split gap 9.5cm\n- #measure handstand hold 9s'), []);
  });

  it('asks which, where the goal has several and the reading names none', () => {
    assert.deepEqual(unknown('- #measure low-split 9.5cm'), []);
    assert.deepEqual(unknown('- #measure handstand 9s'), [
      '2026-02-24.md | warning | handstand | The goal handstand has several metrics; say which: hold, straight',
    ]);
  });

  it('stands on the name in a step', () => {
    const step = (line: string) =>
      told(
        'unknown-metric',
        { 'goals.md': `- #goal low-split\n- #metric gap from:14cm\n${line}` },
        '2026-02-24',
      );
    assert.deepEqual(step('- [ ] #step half metric:gapp to:7cm'), [
      'goals.md | warning | gapp | The goal low-split has no metric gapp; did you mean gap?',
    ]);
    assert.deepEqual(
      step('- [ ] #step half metric:gap to:7cm\n- [ ] #step third to:5cm\n- [ ] #step coach-says-so'),
      [],
    );
  });

  it('leaves readings of unknown goals to that finding', () => {
    assert.deepEqual(unknown('- #measure planche lean 9deg'), []);
  });
});
