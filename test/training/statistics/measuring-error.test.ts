import assert from 'node:assert/strict';
import fc from 'fast-check';
import { describe, it } from 'mocha';
import {
  limitsOfAgreement,
  minimalDetectableChange,
  typicalErrorFromRepeats,
  typicalErrorFromTrials,
  withinMeasuringNoise,
} from '../../../src/training/statistics/measuring-error';
import { estimated, refused } from '../../published/estimated';

const seeded = { seed: 20260224 };
const reading = fc.integer({ min: -400, max: 400 });
const days = fc.array(fc.array(reading, { minLength: 2, maxLength: 4 }), { minLength: 1, maxLength: 6 });

function near(actual: number, expected: number): void {
  assert.ok(
    Math.abs(actual - expected) <= 1e-9 * (1 + Math.abs(expected)),
    `${actual}, expected ${expected}`,
  );
}

describe('the typical error from repeats', () => {
  it('does not see that days differ: only what differs within a day counts', () => {
    fc.assert(
      fc.property(days, fc.array(reading, { minLength: 6, maxLength: 6 }), (readings, shifts) => {
        const moved = readings.map((day, i) => day.map((value) => value + (shifts[i] ?? 0)));
        near(
          estimated(typicalErrorFromRepeats(moved)).typicalError,
          estimated(typicalErrorFromRepeats(readings)).typicalError,
        );
      }),
      seeded,
    );
  });

  it('scales with the unit, does not mind the order, and leaves single readings out', () => {
    fc.assert(
      fc.property(days, fc.constantFrom(0.1, 2.54, 10), (readings, unit) => {
        const before = estimated(typicalErrorFromRepeats(readings));
        const scaled = readings.map((day) => day.map((value) => value * unit));
        near(estimated(typicalErrorFromRepeats(scaled)).typicalError, before.typicalError * unit);
        near(estimated(typicalErrorFromRepeats(scaled)).interval.upper, before.interval.upper * unit);
        const reversed = readings.map((day) => [...day].reverse()).reverse();
        near(estimated(typicalErrorFromRepeats(reversed)).typicalError, before.typicalError);
        assert.deepEqual(typicalErrorFromRepeats([...readings, [17], []]), before);
      }),
      seeded,
    );
  });

  it('says what is missing without repeats, and what is short of a good estimate', () => {
    for (const [readings, n] of [
      [[], 0],
      [[[5]], 0],
      [[[5], [6]], 0],
      [[[5], [6], [7]], 0],
    ] as const) {
      const result = refused(typicalErrorFromRepeats(readings));
      assert.equal(result.n, n);
      assert.deepEqual(result.missing, [
        { what: 'days-with-repeats', have: 0, need: 3 },
        { what: 'repeats', have: 0, need: 6 },
      ]);
    }
    assert.deepEqual(estimated(typicalErrorFromRepeats([[5, 6]])).shortOfRecommended, [
      { what: 'days-with-repeats', have: 1, need: 3 },
      { what: 'repeats', have: 1, need: 6 },
    ]);
  });
});

describe('the typical error from trials', () => {
  it('does not count a shift that is common to all as noise', () => {
    const rows = fc.array(fc.tuple(reading, reading, reading), { minLength: 2, maxLength: 9 });
    fc.assert(
      fc.property(rows, reading, (trials, learned) => {
        const later = trials.map(([first, second, third]) => [first, second + learned, third + 2 * learned]);
        const [before, after] = [
          estimated(typicalErrorFromTrials(trials)),
          estimated(typicalErrorFromTrials(later)),
        ];
        assert.ok(Math.abs(after.typicalError - before.typicalError) < 1e-6);
        near(after.meanChange, before.meanChange + 2 * learned);
      }),
      seeded,
    );
  });

  it('refuses one subject, one trial or none', () => {
    assert.equal(refused(typicalErrorFromTrials([])).reason, 'too-few-subjects');
    assert.deepEqual(refused(typicalErrorFromTrials([[1, 2]])).missing, [
      { what: 'subjects', have: 1, need: 2 },
    ]);
    assert.deepEqual(refused(typicalErrorFromTrials([[1], [2], [3]])).missing, [
      { what: 'trials', have: 1, need: 2 },
    ]);
    assert.equal(limitsOfAgreement([[1, 2]]), undefined);
  });
});

describe('the minimal detectable change', () => {
  it('halves when each reading is the mean of four, and grows with the confidence', () => {
    near(minimalDetectableChange(1.4, 0.95, 4), minimalDetectableChange(1.4) / 2);
    assert.ok(minimalDetectableChange(1.4, 0.9) < minimalDetectableChange(1.4, 0.95));
  });

  it('is the line between noise and change, whichever the direction', () => {
    const detectable = minimalDetectableChange(1);
    assert.equal(withinMeasuringNoise(2.7, detectable), true);
    assert.equal(withinMeasuringNoise(-2.7, detectable), true);
    assert.equal(withinMeasuringNoise(-2.8, detectable), false);
  });
});
