import assert from 'node:assert/strict';
import fc from 'fast-check';
import { describe, it } from 'mocha';
import { firthLogistic } from '../../../src/training/statistics/logistic-firth';
import { maximumLikelihoodLogistic } from '../../../src/training/statistics/logistic-maximum-likelihood';
import {
  chanceAt,
  type LogisticFit,
  type LogisticObservation,
  predictorAtChance,
} from '../../../src/training/statistics/logistic-model';
import { posteriorModeLogistic } from '../../../src/training/statistics/logistic-posterior-mode';
import { at, estimated, refused } from '../../published/estimated';

const seeded = { seed: 20260224, numRuns: 60 };
const observation: fc.Arbitrary<LogisticObservation> = fc.record({
  predictors: fc.tuple(fc.integer({ min: 12, max: 120 })),
  outcome: fc.boolean(),
});
const many = fc.array(observation, { minLength: 8, maxLength: 30 });
const methods = { maximumLikelihoodLogistic, firthLogistic, posteriorModeLogistic };

function near(actual: number, expected: number, tolerance = 1e-6): void {
  assert.ok(
    Math.abs(actual - expected) <= tolerance * (1 + Math.abs(expected)),
    `${actual}, expected ${expected}`,
  );
}

/** Whether one predictor divides the outcomes, touching allowed: then maximum likelihood has no finite answer. */
function divides(observations: readonly LogisticObservation[]): boolean {
  const values = (wanted: boolean) =>
    observations.filter(({ outcome }) => outcome === wanted).map(({ predictors }) => at(predictors, 0));
  const [yes, no] = [values(true), values(false)];
  return Math.max(...no) <= Math.min(...yes) || Math.max(...yes) <= Math.min(...no);
}

describe('logistic regression', () => {
  for (const [name, method] of Object.entries(methods)) {
    it(`${name}: shifting and scaling the hours moves the coefficients along, and no chance changes`, () => {
      fc.assert(
        fc.property(
          many,
          fc.integer({ min: -50, max: 50 }),
          fc.constantFrom(0.25, 24),
          (data, shift, unit) => {
            const before = method(data);
            const after = method(
              data.map(({ predictors, outcome }) => ({
                predictors: [(at(predictors, 0) + shift) * unit],
                outcome,
              })),
            );
            if (before.status === 'not-estimable') {
              assert.equal(refused(after).reason, before.reason);
              return;
            }
            const [a, b] = pairOf(before);
            const [a2, b2] = pairOf(estimated(after));
            near(b2 * unit, b);
            near(a2, a - b * shift, 1e-5);
            near(chanceAt(estimated(after), [(60 + shift) * unit]).lower, chanceAt(before, [60]).lower);
          },
        ),
        seeded,
      );
    });

    it(`${name}: does not mind the order, and turns over with the outcome`, () => {
      fc.assert(
        fc.property(many, (data) => {
          const before = method(data);
          if (before.status === 'not-estimable') return;
          const [a, b] = pairOf(before);
          const [a2, b2] = pairOf(estimated(method([...data].reverse())));
          near(a2, a);
          near(b2, b);
          const turned = method(data.map(({ predictors, outcome }) => ({ predictors, outcome: !outcome })));
          near(at(estimated(turned).coefficients, 1), -b);
        }),
        seeded,
      );
    });

    it(`${name}: refuses a predictor that never varies, and no observations at all`, () => {
      const flat = Array.from({ length: 9 }, (_, i) => ({ predictors: [48], outcome: i % 2 === 0 }));
      assert.equal(refused(method(flat)).reason, 'predictor-does-not-vary');
      assert.deepEqual(refused(method([])).missing, [{ what: 'observations', have: 0, need: 1 }]);
      assert.deepEqual(refused(method(flat.slice(0, 1))).missing, [
        { what: 'observations', have: 1, need: 2 },
      ]);
    });
  }

  it('maximum likelihood refuses exactly the data that are divided or have one outcome', () => {
    const few = fc.array(
      fc.record({ predictors: fc.tuple(fc.integer({ min: 0, max: 6 })), outcome: fc.boolean() }),
      { minLength: 2, maxLength: 10 },
    );
    fc.assert(
      fc.property(few, (data) => {
        if (new Set(data.map(({ predictors }) => predictors[0])).size === 1) return;
        const result = maximumLikelihoodLogistic(data);
        const oneOutcome = new Set(data.map(({ outcome }) => outcome)).size === 1;
        const expected = oneOutcome ? 'one-outcome-only' : divides(data) ? 'separated' : 'estimated';
        assert.equal(result.status === 'estimated' ? 'estimated' : result.reason, expected);
      }),
      { ...seeded, numRuns: 400 },
    );
  });

  it('the penalised fits are finite whatever the data', () => {
    fc.assert(
      fc.property(many, (data) => {
        if (new Set(data.map(({ predictors }) => predictors[0])).size === 1) return;
        for (const method of [firthLogistic, posteriorModeLogistic]) {
          const fit = estimated(method(data));
          assert.ok([...fit.coefficients, ...fit.standardErrors].every(Number.isFinite));
          assert.equal(fit.n, data.length);
        }
      }),
      { ...seeded, numRuns: 200 },
    );
  });

  it('duplicates do not move the maximum likelihood estimate; they halve its variance', () => {
    fc.assert(
      fc.property(many, (data) => {
        const once = maximumLikelihoodLogistic(data);
        if (once.status === 'not-estimable') return;
        const twice = estimated(maximumLikelihoodLogistic([...data, ...data]));
        near(at(twice.coefficients, 1), at(once.coefficients, 1));
        near(at(twice.standardErrors, 1) * Math.SQRT2, at(once.standardErrors, 1));
      }),
      seeded,
    );
  });

  it('the three methods agree when there are many observations', () => {
    const data = [24, 24, 36, 48, 48, 48, 60, 72, 72, 96, 96, 120].map((hours, i) => ({
      predictors: [hours],
      outcome: [true, true, true, true, false, true, false, true, false, false, false, false][i] === true,
    }));
    const often = Array.from({ length: 400 }, () => data).flat();
    const values = Object.values(methods).map((method) => at(estimated(method(often)).coefficients, 1));
    for (const value of values) near(value, at(values, 0), 2e-3);
  });

  it('the chance at the value for a chance is that chance', () => {
    fc.assert(
      fc.property(many, fc.double({ min: 0.05, max: 0.95, noNaN: true }), (data, chance) => {
        const fit = posteriorModeLogistic(data);
        if (fit.status === 'not-estimable' || Math.abs(at(fit.coefficients, 1)) < 1e-6) return;
        near(chanceAt(fit, [estimated(predictorAtChance(fit, chance)).value]).chance, chance);
      }),
      seeded,
    );
  });

  it('refuses predictors that are combinations of each other', () => {
    const data = [24, 30, 48, 60, 72, 96].map((hours, i) => ({
      predictors: [hours, 2 * hours + 1],
      outcome: i % 2 === 0,
    }));
    assert.equal(refused(maximumLikelihoodLogistic(data)).reason, 'predictors-collinear');
  });
});

function pairOf(fit: LogisticFit): readonly [intercept: number, slope: number] {
  return [at(fit.coefficients, 0), at(fit.coefficients, 1)];
}
