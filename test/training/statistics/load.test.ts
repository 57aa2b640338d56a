import assert from 'node:assert/strict';
import fc from 'fast-check';
import { describe, it } from 'mocha';
import { loadChange } from '../../../src/training/statistics/load-change';
import { type Load, sessionLoad, totalLoad, weekLoad } from '../../../src/training/statistics/session-load';
import {
  exponentialWorkloadRatio,
  rollingWorkloadRatio,
} from '../../../src/training/statistics/workload-ratio';
import { estimated, refused } from '../../published/estimated';

const seeded = { seed: 20260224 };
const load = fc.integer({ min: 0, max: 900 });
const week = fc.array(load, { minLength: 7, maxLength: 7 });
const month = fc.array(load, { minLength: 28, maxLength: 60 });

function near(actual: unknown, expected: unknown): void {
  if (typeof actual !== 'number' || typeof expected !== 'number') {
    assert.deepEqual(actual, expected);
    return;
  }
  assert.ok(
    Math.abs(actual - expected) <= 1e-9 * (1 + Math.abs(expected)),
    `${actual}, expected ${expected}`,
  );
}

describe('the load of sessions, days and weeks', () => {
  it('keeps what is unknown unknown, never zero', () => {
    assert.equal(sessionLoad(undefined, 60), undefined);
    assert.equal(sessionLoad(7, undefined), undefined);
    assert.equal(sessionLoad(0, 60), 0);
    assert.deepEqual(totalLoad([300, undefined, 120]), {
      n: 3,
      unknown: 1,
      total: undefined,
      knownTotal: 420,
    });
    assert.deepEqual(totalLoad([]), { n: 0, unknown: 0, total: 0, knownTotal: 0 });
    const partly = estimated(weekLoad([300, 0, undefined, 180, 0, 540, 120]));
    assert.equal(partly.total, undefined);
    assert.equal(partly.knownTotal, 1140);
    for (const figure of [partly.monotony, partly.strain]) {
      assert.deepEqual(figure, {
        status: 'not-estimable',
        n: 7,
        reason: 'unknown-loads',
        missing: [{ what: 'known-days', have: 6, need: 7 }],
      });
    }
  });

  it('monotony does not depend on the unit of load nor on the order of the days; strain scales', () => {
    fc.assert(
      fc.property(week, fc.constantFrom(0.5, 3), (days, unit) => {
        const before = estimated(weekLoad(days));
        const after = estimated(weekLoad(days.map((day) => day * unit)));
        const reversed = estimated(weekLoad([...days].reverse()));
        near(after.monotony, before.monotony);
        near(reversed.monotony, before.monotony);
        near(after.strain, typeof before.strain === 'number' ? before.strain * unit : before.strain);
      }),
      seeded,
    );
  });

  it('is never infinite', () => {
    fc.assert(
      fc.property(fc.array(fc.constantFrom(0, 0.1, 0.3, 70), { minLength: 7, maxLength: 7 }), (days) => {
        const { monotony } = estimated(weekLoad(days));
        assert.equal(typeof monotony === 'number', new Set(days).size > 1);
        if (typeof monotony === 'number') assert.ok(Number.isFinite(monotony));
      }),
      seeded,
    );
  });

  it('says how many days are missing from a week', () => {
    for (const have of [0, 1, 2, 3]) {
      const result = refused(weekLoad(new Array<number>(have).fill(100)));
      assert.deepEqual(result.missing, [{ what: 'days', have, need: 7 }]);
    }
    assert.throws(() => weekLoad(new Array<number>(8).fill(100)), RangeError);
  });
});

describe('the change of a week', () => {
  it('is told against the mean of the three weeks before it', () => {
    const change = estimated(loadChange(1800, [9999, 1200, 1500, 1800]));
    assert.deepEqual(change, { status: 'estimated', n: 3, previousMean: 1500, difference: 300, percent: 20 });
  });

  it('says what is missing', () => {
    for (const have of [0, 1, 2]) {
      assert.deepEqual(refused(loadChange(900, new Array<number>(have).fill(1))).missing, [
        { what: 'weeks', have, need: 3 },
      ]);
    }
    assert.deepEqual(refused(loadChange(900, [1, undefined, 2])).missing, [
      { what: 'known-weeks', have: 3, need: 4 },
    ]);
    assert.equal(refused(loadChange(undefined, [1, 2, 3])).reason, 'unknown-loads');
    assert.equal(refused(loadChange(900, [0, 0, 0])).reason, 'no-previous-load');
  });
});

describe('the workload ratio', () => {
  const forms = [
    (loads: readonly Load[]) => rollingWorkloadRatio(loads, 'coupled'),
    (loads: readonly Load[]) => rollingWorkloadRatio(loads, 'uncoupled'),
    exponentialWorkloadRatio,
  ];

  it('does not depend on the unit of load, and is 1 for a steady load', () => {
    fc.assert(
      fc.property(month, (loads) => {
        for (const ratioOf of forms) {
          const [before, after] = [ratioOf(loads), ratioOf(loads.map((day) => day * 3))];
          if (before.status === 'estimated') near(estimated(after).ratio, before.ratio);
          near(estimated(ratioOf(loads.map(() => 250))).ratio, 1);
        }
      }),
      seeded,
    );
  });

  it('the coupled ratio follows from the uncoupled one', () => {
    fc.assert(
      fc.property(month, (loads) => {
        const coupled = rollingWorkloadRatio(loads, 'coupled');
        const uncoupled = rollingWorkloadRatio(loads, 'uncoupled');
        if (coupled.status !== 'estimated' || uncoupled.status !== 'estimated') return;
        near(coupled.ratio, (4 * uncoupled.ratio) / (uncoupled.ratio + 3));
      }),
      seeded,
    );
  });

  it('shows nothing for the first 28 days, and asks for days in a row that are known', () => {
    for (const ratioOf of forms) {
      for (const have of [0, 1, 2, 3, 27]) {
        const result = refused(ratioOf(new Array<number>(have).fill(100)));
        assert.equal(result.reason, 'too-few-days');
        assert.deepEqual(result.missing, [{ what: 'known-days-in-a-row', have, need: 28 }]);
      }
      const holed = [...new Array<Load>(30).fill(100), undefined, 100, 100];
      assert.equal(refused(ratioOf(holed)).reason, 'unknown-loads');
      assert.deepEqual(refused(ratioOf(holed)).missing, [{ what: 'known-days-in-a-row', have: 2, need: 28 }]);
      assert.equal(refused(ratioOf(new Array<number>(28).fill(0))).reason, 'no-chronic-load');
    }
  });
});
