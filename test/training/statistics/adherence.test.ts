import assert from 'node:assert/strict';
import fc from 'fast-check';
import { describe, it } from 'mocha';
import {
  adherenceBaseline,
  adherenceScore,
  sessionsToAlarm,
} from '../../../src/training/statistics/adherence-score';
import { bernoulliCusum } from '../../../src/training/statistics/bernoulli-cusum';
import { tabularCusum } from '../../../src/training/statistics/cusum';
import { ewmaChart } from '../../../src/training/statistics/ewma-chart';
import { kaplanMeier } from '../../../src/training/statistics/kaplan-meier';
import { returnRamp } from '../../../src/training/statistics/return-ramp';
import { at, estimated, refused } from '../../published/estimated';

const seeded = { seed: 20260224 };
const sessions = fc.array(fc.boolean(), { maxLength: 60 });

describe('the adherence score', () => {
  it('never falls below zero, and is never lowered by a missed session', () => {
    fc.assert(
      fc.property(sessions, (done) => {
        const { scores, n } = adherenceScore(done);
        assert.equal(n, done.length);
        for (const [i, score] of scores.entries()) {
          const before = i === 0 ? 0 : at(scores, i - 1);
          assert.equal(score, done[i] ? Math.max(0, before - 1) : before + 2);
        }
      }),
      seeded,
    );
  });

  it('is silent while everything is done, and reports three misses in a row', () => {
    assert.deepEqual(adherenceScore(new Array<boolean>(30).fill(true)).alarms, []);
    assert.deepEqual(adherenceScore([true, false, false, false]).alarms, [3]);
    assert.deepEqual(adherenceScore([]), { n: 0, scores: [], alarms: [] });
  });

  it('takes longer to a false alarm the more is done and the higher the limit', () => {
    for (let limit = 2; limit < 9; limit++) {
      assert.ok(sessionsToAlarm(0.8, limit + 1) > sessionsToAlarm(0.8, limit));
      assert.ok(sessionsToAlarm(0.9, limit) > sessionsToAlarm(0.8, limit));
    }
    assert.equal(sessionsToAlarm(0, 6), 3);
    assert.equal(sessionsToAlarm(1, 6), Number.POSITIVE_INFINITY);
  });

  it('needs twenty sessions for a base rate, and says how many there are', () => {
    for (const have of [0, 1, 2, 3, 19]) {
      const result = refused(adherenceBaseline(new Array<boolean>(have).fill(true)));
      assert.deepEqual(result.missing, [{ what: 'sessions', have, need: 20 }]);
    }
    const base = estimated(adherenceBaseline(Array.from({ length: 20 }, (_, i) => i % 5 !== 0)));
    assert.equal(base.proportion, 0.8);
    assert.equal(base.n, 20);
  });
});

describe('cumulative sums and moving averages', () => {
  const values = fc.array(fc.integer({ min: -50, max: 50 }), { maxLength: 40 });
  const design = { target: 3, slack: 2, limit: 9 };

  it('a cumulative sum mirrors when values and target change their sign', () => {
    fc.assert(
      fc.property(values, (xs) => {
        const chart = tabularCusum(xs, design);
        const turned = tabularCusum(
          xs.map((x) => -x),
          { ...design, target: -3 },
        );
        assert.deepEqual(turned.high, chart.low);
        assert.deepEqual(turned.low, chart.high);
        assert.deepEqual(turned.alarms, chart.alarms);
        assert.ok([...chart.high, ...chart.low].every((total) => total >= 0));
      }),
      seeded,
    );
  });

  it('a log-likelihood sum is silent without a limit, and reaches one after misses enough', () => {
    const missed = new Array<boolean>(5).fill(false);
    const hypotheses = { usual: 0.8, dropped: 0.5 };
    assert.deepEqual(bernoulliCusum(missed, hypotheses).alarms, []);
    // Each miss adds ln 2.5; four of them pass 3.6.
    assert.deepEqual(bernoulliCusum(missed, hypotheses, 3.6).alarms, [3, 4]);
  });

  it('a moving average stays between its start and the values, and its limits widen', () => {
    const chart = { start: 0, standardDeviation: 10, weight: 0.3, width: 3 };
    fc.assert(
      fc.property(values, (xs) => {
        const { averages, limits, asymptoticLimits, n } = ewmaChart(xs, chart);
        assert.equal(n, xs.length);
        for (const [i, average] of averages.entries()) {
          assert.ok(average <= Math.max(0, ...xs) + 1e-9 && average >= Math.min(0, ...xs) - 1e-9);
          assert.ok(at(limits, i).upper <= asymptoticLimits.upper);
          if (i > 0) assert.ok(at(limits, i).upper >= at(limits, i - 1).upper);
        }
      }),
      seeded,
    );
  });
});

describe('the survival curve', () => {
  const run = fc.record({ time: fc.integer({ min: 1, max: 30 }), ended: fc.boolean() });

  it('is the plain share still going when every run has ended', () => {
    fc.assert(
      fc.property(fc.array(run, { minLength: 1, maxLength: 30 }), (runs) => {
        const ended = runs.map(({ time }) => ({ time, ended: true }));
        for (const { time, survival } of estimated(kaplanMeier(ended)).steps) {
          const share = ended.filter((other) => other.time > time).length / ended.length;
          assert.ok(Math.abs(survival - share) < 1e-12);
        }
      }),
      seeded,
    );
  });

  it('falls, does not mind the order, and is not changed by duplicates', () => {
    fc.assert(
      fc.property(fc.array(run, { minLength: 1, maxLength: 30 }), (runs) => {
        const curve = estimated(kaplanMeier(runs));
        assert.deepEqual(kaplanMeier([...runs].reverse()), curve);
        const twice = estimated(kaplanMeier([...runs, ...runs]));
        for (const [i, step] of curve.steps.entries()) {
          assert.ok(Math.abs(at(twice.steps, i).survival - step.survival) < 1e-12);
          if (i > 0) assert.ok(step.survival < at(curve.steps, i - 1).survival);
        }
      }),
      seeded,
    );
  });

  it('says that a run is missing, and has no steps while nothing has ended', () => {
    assert.deepEqual(refused(kaplanMeier([])).missing, [{ what: 'runs', have: 0, need: 1 }]);
    assert.deepEqual(estimated(kaplanMeier([{ time: 4, ended: false }])).steps, []);
  });
});

describe('the return ramp', () => {
  it('rises to the usual maximum and never beyond, in any unit', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 5000 }), (usual) => {
        const limits = returnRamp(usual).weeks.map(({ limit }) => limit);
        assert.deepEqual(
          [...limits].sort((a, b) => a - b),
          limits,
        );
        assert.equal(limits.at(-1), usual);
      }),
      seeded,
    );
  });
});
