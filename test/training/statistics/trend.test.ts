import assert from 'node:assert/strict';
import fc from 'fast-check';
import { describe, it } from 'mocha';
import { forecastTarget } from '../../../src/training/statistics/forecast';
import { exactUpperTail, kendallScore } from '../../../src/training/statistics/kendall-score';
import { mannKendall } from '../../../src/training/statistics/mann-kendall';
import { comparePace, neededPace } from '../../../src/training/statistics/needed-pace';
import type { Point } from '../../../src/training/statistics/point';
import { collapseRepeats } from '../../../src/training/statistics/repeated-readings';
import { lineAt, type TheilSenLine, theilSen } from '../../../src/training/statistics/theil-sen';
import { estimated, refused, series } from '../../published/estimated';

const seeded = { seed: 20260224 };

/** Whole numbers, so that shifting and doubling are exact and results can be compared with `equal`. */
const point: fc.Arbitrary<Point> = fc.record({
  x: fc.integer({ min: 0, max: 400 }),
  y: fc.integer({ min: -60, max: 60 }),
});
const spreadPoints = fc
  .array(point, { minLength: 2, maxLength: 25 })
  .filter((points) => new Set(points.map(({ x }) => x)).size > 1);

function intervalOf(line: TheilSenLine): readonly number[] {
  return 'lower' in line.interval ? [line.interval.lower, line.interval.upper] : [];
}

function near(actual: number, expected: number, size = 1): void {
  assert.ok(
    Math.abs(actual - expected) <= 1e-9 * (size + Math.abs(expected)),
    `${actual}, expected ${expected}`,
  );
}

describe('the Theil-Sen line', () => {
  it('has its intercept moved, and nothing else, when the dates shift', () => {
    fc.assert(
      fc.property(spreadPoints, fc.integer({ min: -20000, max: 20000 }), (points, shift) => {
        const before = estimated(theilSen(points));
        const after = estimated(theilSen(points.map(({ x, y }) => ({ x: x + shift, y }))));
        assert.equal(after.slope, before.slope);
        assert.deepEqual(intervalOf(after), intervalOf(before));
        assert.equal(after.medianY, before.medianY);
        near(after.intercept.separate, before.intercept.separate - before.slope * shift, 1e4);
        near(after.intercept.joint, before.intercept.joint - before.slope * shift, 1e4);
      }),
      seeded,
    );
  });

  it('scales with the unit of the reading, and turns over with its sign', () => {
    fc.assert(
      fc.property(spreadPoints, fc.constantFrom(0.25, 2, 8), (points, unit) => {
        const before = estimated(theilSen(points));
        const after = estimated(theilSen(points.map(({ x, y }) => ({ x, y: y * unit }))));
        assert.equal(after.slope, before.slope * unit);
        assert.deepEqual(
          intervalOf(after),
          intervalOf(before).map((bound) => bound * unit),
        );
        assert.equal(after.intercept.joint, before.intercept.joint * unit);
        const turned = estimated(theilSen(points.map(({ x, y }) => ({ x, y: -y }))));
        near(turned.slope, -before.slope);
        for (const [i, bound] of intervalOf(turned).entries())
          near(bound, -(intervalOf(before).at(1 - i) ?? 0));
      }),
      seeded,
    );
  });

  it('scales inversely with the unit of time', () => {
    fc.assert(
      fc.property(spreadPoints, (points) => {
        const days = estimated(theilSen(points));
        const quarters = estimated(theilSen(points.map(({ x, y }) => ({ x: x * 4, y }))));
        assert.equal(quarters.slope * 4, days.slope);
      }),
      seeded,
    );
  });

  it('does not mind the order of the notes', () => {
    const shuffled = spreadPoints.chain((points) =>
      fc.tuple(fc.constant(points), fc.shuffledSubarray([...points], { minLength: points.length })),
    );
    fc.assert(
      fc.property(shuffled, ([points, order]) => {
        const { intercept: a, ...before } = estimated(theilSen(points));
        const { intercept: b, ...after } = estimated(theilSen(order));
        assert.deepEqual(after, before);
        assert.deepEqual(b, a);
        assert.deepEqual(mannKendall(order), mannKendall(points));
      }),
      seeded,
    );
  });

  it('is not biased by duplicates, and collapsing repeats keeps them from narrowing its interval', () => {
    fc.assert(
      fc.property(spreadPoints, fc.integer({ min: 2, max: 4 }), (points, times) => {
        const once = estimated(theilSen(points));
        const repeated = Array.from({ length: times }, () => points).flat();
        const often = estimated(theilSen(repeated));
        assert.equal(often.slope, once.slope);
        assert.equal(often.intercept.separate, once.intercept.separate);
        assert.equal(often.intercept.joint, once.intercept.joint);
        const collapsed = collapseRepeats(repeated);
        assert.deepEqual(
          collapsed.map(({ x }) => x),
          collapseRepeats(points).map(({ x }) => x),
        );
        const [a, b] = [estimated(theilSen(collapsed)), estimated(theilSen(collapseRepeats(points)))];
        near(a.slope, b.slope);
        for (const [i, bound] of intervalOf(a).entries()) near(bound, intervalOf(b).at(i) ?? Number.NaN);
      }),
      seeded,
    );
  });

  it('holds its slope inside its interval', () => {
    fc.assert(
      fc.property(spreadPoints, (points) => {
        const line = estimated(theilSen(points));
        const [lower, upper] = intervalOf(line);
        if (lower === undefined || upper === undefined) return;
        assert.ok(lower <= line.slope && line.slope <= upper);
      }),
      seeded,
    );
  });

  it('says what is missing with 0, 1, 2 and 3 points', () => {
    assert.deepEqual(refused(theilSen([])).missing, [{ what: 'points', have: 0, need: 2 }]);
    assert.deepEqual(refused(theilSen(series(5))).missing, [{ what: 'points', have: 1, need: 2 }]);
    for (const points of [series(5, 7), series(5, 7, 8)]) {
      const line = estimated(theilSen(points));
      assert.equal(line.n, points.length);
      assert.deepEqual(line.interval, {
        status: 'not-estimable',
        n: points.length,
        reason: 'too-few-points',
        missing: [{ what: 'points', have: points.length, need: 5 }],
      });
    }
  });

  it('refuses readings of a single day', () => {
    const sameDay = [
      { x: 9, y: 1 },
      { x: 9, y: 2 },
      { x: 9, y: 4 },
    ];
    assert.equal(refused(theilSen(sameDay)).reason, 'same-x');
  });

  it('promises no 95 % interval that its points cannot hold', () => {
    // With n untied points the widest bounds hold the slope with a chance of 1 - 2/n!.
    for (const [n, confidence, possible] of [
      [4, 0.95, false],
      [5, 0.95, true],
      [4, 0.9, true],
      [3, 0.9, false],
    ] as const) {
      const points = series(1, 2.1, 2.9, 4.2, 5).slice(0, n);
      assert.equal(
        'lower' in estimated(theilSen(points, confidence)).interval,
        possible,
        `${n}, ${confidence}`,
      );
      assert.equal(1 - 2 * exactUpperTail(n, (n * (n - 1)) / 2) >= confidence, possible);
    }
  });
});

describe('the Mann-Kendall test', () => {
  it('depends on order alone: any rising change of unit leaves it alone, a falling one turns it', () => {
    fc.assert(
      fc.property(spreadPoints, (points) => {
        const score = kendallScore(points);
        const cubed = kendallScore(points.map(({ x, y }) => ({ x, y: y ** 3 })));
        assert.deepEqual(cubed, score);
        assert.equal(kendallScore(points.map(({ x, y }) => ({ x, y: -y }))).s + score.s, 0);
      }),
      seeded,
    );
  });

  it('is symmetric in its exact tails, which add up to one', () => {
    for (const n of [5, 8, 10]) {
      const most = (n * (n - 1)) / 2;
      assert.ok(Math.abs(exactUpperTail(n, -most) - 1) < 1e-12);
      for (let s = -most; s <= most; s++) {
        assert.ok(Math.abs(exactUpperTail(n, s) + exactUpperTail(n, -s + 1) - 1) < 1e-12);
      }
    }
  });

  it('says "too few points" below five', () => {
    for (const values of [[], [1], [1, 2], [1, 2, 3], [1, 2, 3, 4]]) {
      const result = refused(mannKendall(series(...values)));
      assert.equal(result.reason, 'too-few-points');
      assert.deepEqual(result.missing, [{ what: 'points', have: values.length, need: 5 }]);
    }
  });

  it('finds nothing in readings that never change', () => {
    assert.equal(refused(mannKendall(series(3, 3, 3, 3, 3, 3))).reason, 'no-variation');
  });
});

describe('the forecast', () => {
  const gaining = series(60, 62, 61, 65, 66, 68, 67, 71);

  it('shifts with the dates and scales with the unit', () => {
    fc.assert(
      fc.property(fc.integer({ min: -9000, max: 9000 }), fc.constantFrom(0.5, 4), (shift, unit) => {
        const before = estimated(forecastTarget(theilSen(gaining), 80, 'rising'));
        const moved = gaining.map(({ x, y }) => ({ x: x + shift, y: y * unit }));
        const after = estimated(forecastTarget(theilSen(moved), 80 * unit, 'rising'));
        near(after.at, before.at + shift, 1e4);
        near(after.earliest, before.earliest + shift, 1e4);
        near(after.latest, before.latest + shift, 1e4);
        assert.equal(after.extrapolation.beyondObservedSpan, before.extrapolation.beyondObservedSpan);
      }),
      seeded,
    );
  });

  it('is the same for a goal that falls', () => {
    const rising = estimated(forecastTarget(theilSen(gaining), 80, 'rising'));
    const falling = estimated(
      forecastTarget(theilSen(gaining.map(({ x, y }) => ({ x, y: -y }))), -80, 'falling'),
    );
    near(falling.at, rising.at);
    near(falling.earliest, rising.earliest);
    near(falling.latest, rising.latest);
  });

  it('orders its range, and holds the middle estimate', () => {
    fc.assert(
      fc.property(spreadPoints, fc.integer({ min: -500, max: 500 }), (points, target) => {
        const forecast = forecastTarget(theilSen(points), target, 'rising');
        if (forecast.status !== 'estimated') return;
        assert.ok(forecast.earliest <= forecast.at && forecast.at <= forecast.latest);
        assert.ok(Number.isFinite(forecast.latest));
      }),
      seeded,
    );
  });

  it('gives no date when the slope may be zero or leads away, or when there is no interval', () => {
    const level = series(60, 62, 59, 61, 60, 62, 59);
    assert.equal(refused(forecastTarget(theilSen(level), 80, 'rising')).reason, 'slope-may-be-zero');
    assert.equal(refused(forecastTarget(theilSen(gaining), 40, 'falling')).reason, 'moving-away');
    const few = refused(forecastTarget(theilSen(series(60, 61, 62)), 80, 'rising'));
    assert.equal(few.reason, 'too-few-points');
    assert.deepEqual(few.missing, [{ what: 'points', have: 3, need: 5 }]);
    assert.equal(refused(forecastTarget(theilSen([]), 80, 'rising')).reason, 'too-few-points');
  });

  it('says when the line is there already', () => {
    const line = estimated(theilSen(gaining));
    const reached = forecastTarget(line, 69, 'rising');
    assert.equal(reached.status, 'reached');
    assert.ok(reached.status === 'reached' && reached.at <= 8);
    near(lineAt(line, reached.status === 'reached' ? reached.at : 0), 69);
  });
});

describe('the needed pace', () => {
  it('is the missing way over the time that is left', () => {
    assert.equal(neededPace({ x: 10, y: 140 }, 160, 20), 2);
    assert.equal(neededPace({ x: 10, y: 12 }, 0, 16), -2);
    assert.equal(neededPace({ x: 10, y: 140 }, 160, 10), undefined);
  });

  it('is compared in the direction of the goal', () => {
    const observed = { lower: -1.5, upper: -0.5 };
    assert.equal(comparePace(-2, observed, 'falling'), 'faster-than-observed');
    assert.equal(comparePace(-1, observed, 'falling'), 'within-observed');
    assert.equal(comparePace(-0.2, observed, 'falling'), 'slower-than-observed');
    assert.equal(comparePace(2, { lower: 0.5, upper: 1.5 }, 'rising'), 'faster-than-observed');
    assert.equal(comparePace(0.2, { lower: 0.5, upper: 1.5 }, 'rising'), 'slower-than-observed');
  });
});
