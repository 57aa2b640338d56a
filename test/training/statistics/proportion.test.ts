import assert from 'node:assert/strict';
import fc from 'fast-check';
import { describe, it } from 'mocha';
import {
  clopperPearson,
  jeffreys,
  wilson,
  wilsonContinuityCorrected,
} from '../../../src/training/statistics/proportion';

const seeded = { seed: 20260224 };
const methods = { wilson, wilsonContinuityCorrected, jeffreys, clopperPearson };
const counts = fc
  .integer({ min: 1, max: 80 })
  .chain((n) => fc.record({ n: fc.constant(n), successes: fc.integer({ min: 0, max: n }) }));

describe('the interval of a share', () => {
  for (const [name, method] of Object.entries(methods)) {
    it(`${name}: holds the share, stays inside 0..1, and mirrors done and missed`, () => {
      fc.assert(
        fc.property(counts, ({ successes, n }) => {
          const done = method(successes, n);
          const missed = method(n - successes, n);
          assert.ok(done && missed);
          assert.ok(0 <= done.lower && done.lower <= done.proportion);
          assert.ok(done.proportion <= done.upper && done.upper <= 1);
          assert.ok(Math.abs(done.lower - (1 - missed.upper)) < 1e-9);
        }),
        seeded,
      );
    });

    it(`${name}: narrows as the same share is seen more often, and widens with the confidence`, () => {
      fc.assert(
        fc.property(counts, ({ successes, n }) => {
          const [few, many, sure] = [
            method(successes, n),
            method(4 * successes, 4 * n),
            method(successes, n, 0.99),
          ];
          assert.ok(few && many && sure);
          assert.ok(many.upper - many.lower < few.upper - few.lower);
          assert.ok(sure.lower <= few.lower && few.upper <= sure.upper);
        }),
        seeded,
      );
    });

    it(`${name}: gives nothing for nothing, and refuses impossible counts`, () => {
      assert.equal(method(0, 0), undefined);
      assert.throws(() => method(3, 2), RangeError);
      assert.throws(() => method(-1, 2), RangeError);
      assert.throws(() => method(0.5, 2), RangeError);
    });
  }

  it('the exact one is never narrower than it promises, for any true share of 12 sessions', () => {
    const n = 12;
    for (let share = 0.01; share < 1; share += 0.01) {
      let covered = 0;
      let chance = (1 - share) ** n;
      for (let k = 0; k <= n; k++) {
        const interval = clopperPearson(k, n);
        if (interval && interval.lower <= share && share <= interval.upper) covered += chance;
        chance *= ((n - k) / (k + 1)) * (share / (1 - share));
      }
      assert.ok(covered >= 0.95, `${share}: ${covered}`);
    }
  });
});
