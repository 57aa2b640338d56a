import assert from 'node:assert/strict';
import fc from 'fast-check';
import { describe, it } from 'mocha';
import { type AsymmetryEquation, asymmetry } from '../../../src/training/statistics/asymmetry';
import {
  type ImagePoint,
  type JointClicks,
  jointAngle,
  jointAngleError,
  openingAngle,
} from '../../../src/training/statistics/joint-angle';
import { minimalDetectableChange } from '../../../src/training/statistics/measuring-error';
import { scaledLength } from '../../../src/training/statistics/scaled-length';
import { sideDifference } from '../../../src/training/statistics/side-difference';
import { estimated, refused } from '../../published/estimated';

const seeded = { seed: 20260224 };
const place: fc.Arbitrary<ImagePoint> = fc.record({
  x: fc.integer({ min: 0, max: 1200 }),
  y: fc.integer({ min: 0, max: 900 }),
});
const clicks: fc.Arbitrary<JointClicks> = fc
  .record({ from: place, joint: place, to: place })
  .filter(({ from, joint, to }) => distance(from, joint) > 20 && distance(to, joint) > 20);

function distance(a: ImagePoint, b: ImagePoint): number {
  return Math.hypot(a.x - b.x, a.y - b.y);
}

function moved({ from, joint, to }: JointClicks, move: (point: ImagePoint) => ImagePoint): JointClicks {
  return { from: move(from), joint: move(joint), to: move(to) };
}

function near(actual: number | undefined, expected: number | undefined): void {
  assert.ok(
    actual !== undefined && expected !== undefined && Math.abs(actual - expected) < 1e-6,
    `${actual}, ${expected}`,
  );
}

/** Whether two angles are the same turn: away from the cut at -90 and 270 they are equal. */
function sameTurn(a: number | undefined, b: number | undefined): void {
  assert.ok(a !== undefined && b !== undefined);
  const turns = (a - b) / 360;
  assert.ok(Math.abs(turns - Math.round(turns)) < 1e-8, `${a}, ${b}`);
}

describe('the joint angle', () => {
  it('does not depend on where, how large or how turned the photo is', () => {
    fc.assert(
      fc.property(clicks, fc.integer({ min: 0, max: 359 }), fc.constantFrom(0.5, 3), (three, turn, size) => {
        const [cos, sin] = [Math.cos((turn * Math.PI) / 180), Math.sin((turn * Math.PI) / 180)];
        const turned = moved(three, ({ x, y }) => ({
          x: size * (cos * x - sin * y) + 40,
          y: size * (sin * x + cos * y) - 7,
        }));
        near(jointAngle(turned), jointAngle(three));
        sameTurn(openingAngle(turned, 'clockwise'), openingAngle(three, 'clockwise'));
        near((jointAngleError(turned, 2) ?? 0) * size, jointAngleError(three, 2));
      }),
      seeded,
    );
  });

  it('mirrors with the photo, and opens on one side as much as it lacks on the other', () => {
    fc.assert(
      fc.property(clicks, (three) => {
        const mirrored = moved(three, ({ x, y }) => ({ x: -x, y }));
        sameTurn(openingAngle(mirrored, 'clockwise'), openingAngle(three, 'anticlockwise'));
        const [one = 0, other = 0] = [openingAngle(three, 'clockwise'), openingAngle(three, 'anticlockwise')];
        sameTurn(one + other, 0);
        const folded = jointAngle(three) ?? 0;
        assert.ok([one, other].some((angle) => Math.abs(Math.abs(angle) - folded) < 1e-6));
        assert.ok(one > -90 && one <= 270);
      }),
      seeded,
    );
  });

  it('is not there when the joint was clicked on a limb', () => {
    const same = { x: 4, y: 4 };
    const three = { from: same, joint: same, to: { x: 9, y: 9 } };
    assert.equal(jointAngle(three), undefined);
    assert.equal(openingAngle(three, 'clockwise'), undefined);
    assert.equal(jointAngleError(three, 2), undefined);
  });
});

describe('a length by a reference', () => {
  it('scales with the unit of the reference, and not with the size of the photo', () => {
    const photo = { target: 850, reference: 400, referenceLength: 100, referenceError: 0.2, clickError: 2 };
    const cm = scaledLength(photo);
    const mm = scaledLength({ ...photo, referenceLength: 1000, referenceError: 2 });
    near(mm?.length, (cm?.length ?? 0) * 10);
    near(mm?.standardError, (cm?.standardError ?? 0) * 10);
    const larger = scaledLength({ ...photo, target: 1700, reference: 800, clickError: 4 });
    near(larger?.length, cm?.length);
    near(larger?.standardError, cm?.standardError);
    assert.equal(scaledLength({ ...photo, reference: 0 }), undefined);
  });
});

describe('asymmetry', () => {
  const equations: readonly AsymmetryEquation[] = [
    'percent-of-larger',
    'percent-of-total',
    'symmetry-index',
    'percent-of-smaller',
    'symmetry-angle',
    'log-ratio',
  ];
  const length = fc.integer({ min: 1, max: 400 });

  it('does not depend on the unit, is zero for equal sides, and keeps its size when the sides change places', () => {
    fc.assert(
      fc.property(length, length, (left, right) => {
        for (const equation of equations) {
          const value = asymmetry(left, right, equation);
          near(asymmetry(left * 8, right * 8, equation), value);
          near(asymmetry(left, left, equation), 0);
          near(Math.abs(asymmetry(right, left, equation) ?? Number.NaN), Math.abs(value ?? Number.NaN));
        }
      }),
      seeded,
    );
  });

  it('means nothing where a side is at or below zero', () => {
    for (const equation of equations) {
      assert.equal(asymmetry(-5, 5, equation), undefined);
      assert.equal(asymmetry(0, 5, equation), undefined);
    }
  });
});

describe('the difference between the sides', () => {
  it('keeps its direction, and is shown only beyond its own noise', () => {
    const even = estimated(sideDifference([-5], [5], 4));
    assert.equal(even.difference, 10);
    assert.equal(even.larger, 'right');
    assert.equal(even.n, 2);
    near(even.noise, minimalDetectableChange(4));
    assert.equal(even.beyondNoise, false);
    assert.equal(estimated(sideDifference([-5], [5], 3)).beyondNoise, true);
    assert.equal(estimated(sideDifference([7], [5])).larger, 'left');
    assert.equal(estimated(sideDifference([7], [5])).beyondNoise, undefined);
  });

  it('has less noise when both sides are read three times', () => {
    const thrice = estimated(sideDifference([10, 11, 12], [20, 21, 22], 4));
    near(thrice.noise, minimalDetectableChange(4, 0.95, 3));
    assert.deepEqual(thrice.readings, { left: 3, right: 3 });
  });

  it('says which side is missing', () => {
    assert.deepEqual(refused(sideDifference([], [])).missing, [
      { what: 'left', have: 0, need: 1 },
      { what: 'right', have: 0, need: 1 },
    ]);
    assert.deepEqual(refused(sideDifference([4, 5], [])).missing, [{ what: 'right', have: 0, need: 1 }]);
  });
});
