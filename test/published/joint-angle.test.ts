// Checks of joint angles from three clicks and of their error.
// Formulas of plane geometry and first-order error propagation; all numbers recomputed [C].
import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import {
  type JointClicks,
  jointAngle,
  jointAngleError,
  openingAngle,
} from '../../src/training/statistics/joint-angle';
import { sampleStandardDeviation } from '../../src/training/statistics/moments';
import { printed } from './printed';

type Place = readonly [x: number, y: number];

function clicks(from: Place, joint: Place, to: Place): JointClicks {
  const point = ([x, y]: Place) => ({ x, y });
  return { from: point(from), joint: point(joint), to: point(to) };
}

/** Two limbs of equal length with a given angle between them, opening clockwise as seen. */
function limbs(degrees: number, length: number): JointClicks {
  const turn = (degrees * Math.PI) / 180;
  return clicks([length, 0], [0, 0], [length * Math.cos(turn), length * Math.sin(turn)]);
}

/** Normally distributed numbers from a fixed generator (Box and Muller). */
function normalNumbers(seed: number): () => number {
  let state = seed;
  const uniform = (): number => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return (state + 0.5) / 2 ** 32;
  };
  return () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
}

/** The same clicks again and again, each coordinate off by a normal error. */
function reclicked({ from, joint, to }: JointClicks, clickError: number, times: number): JointClicks[] {
  const normal = normalNumbers(20260224);
  const off = ({ x, y }: { x: number; y: number }) => ({
    x: x + clickError * normal(),
    y: y + clickError * normal(),
  });
  return Array.from({ length: times }, () => ({ from: off(from), joint: off(joint), to: off(to) }));
}

function meanOf(values: readonly number[]): number {
  return values.reduce((a, b) => a + b, 0) / values.length;
}

describe('published: joint angle', () => {
  it('known angles [C]', () => {
    printed(jointAngle(clicks([100, 0], [0, 0], [0, 100])), '90.000000');
    printed(jointAngle(clicks([100, 0], [0, 0], [-100, 0])), '180.000000');
    printed(jointAngle(clicks([100, 0], [0, 0], [100, 100])), '45.000000');
    printed(jointAngle(clicks([3, 4], [0, 0], [4, 3])), '16.260205');
    printed(jointAngle(clicks([520, 310], [400, 420], [250, 430])), '141.303628');
    assert.equal(jointAngle(clicks([5, 5], [5, 5], [9, 1])), undefined);
  });

  it('click error 2 px, limbs of 300 px: by angle [C]', () => {
    const rows: readonly (readonly [degrees: number, text: string])[] = [
      [0, '.540190'],
      [60, '.661595'],
      [90, '.763944'],
      [120, '.854115'],
      [180, '.935636'],
    ];
    for (const [degrees, text] of rows) printed(jointAngleError(limbs(degrees, 300), 2), text);
  });

  it('equal limbs: s sqrt(4 - 2 cos angle)/length [C]', () => {
    for (const degrees of [10, 75, 143, 200]) {
      const expected = ((3 * Math.sqrt(4 - 2 * Math.cos((degrees * Math.PI) / 180))) / 250) * (180 / Math.PI);
      assert.ok(Math.abs((jointAngleError(limbs(degrees, 250), 3) ?? 0) - expected) < 1e-12);
    }
  });

  it('propagation agrees with simulation: 2.5940 against 2.5942 in the source [C]', () => {
    const example = clicks([520, 310], [400, 420], [250, 430]);
    const error = jointAngleError(example, 3);
    printed(error, '2.5940');
    const angles = reclicked(example, 3, 15_000).map((again) => openingAngle(again, 'anticlockwise') ?? 0);
    // Four standard errors of a standard deviation.
    const spread = sampleStandardDeviation(angles) ?? 0;
    assert.ok(Math.abs(spread / (error ?? 1) - 1) < 4 / Math.sqrt(2 * 15_000), String(spread));
  });

  it('at a right angle, too: .763944 against .7637 in the source’s simulation [C]', () => {
    const angles = reclicked(limbs(90, 300), 2, 15_000).map((again) => jointAngle(again) ?? 0);
    const spread = sampleStandardDeviation(angles) ?? 0;
    assert.ok(Math.abs(spread / 0.763944 - 1) < 4 / Math.sqrt(2 * 15_000), String(spread));
    assert.ok(Math.abs(spread / 0.7637 - 1) < 4 / Math.sqrt(2 * 15_000));
  });

  it('near straight the unsigned angle is biased (mean 179.255, SD 0.564), the signed one is not [C]', () => {
    const again = reclicked(limbs(180, 300), 2, 15_000);
    const unsigned = again.map((each) => jointAngle(each) ?? 0);
    const signed = again.map((each) => openingAngle(each, 'clockwise') ?? 0);
    assert.ok(Math.abs(meanOf(unsigned) - 179.255) < 0.015, String(meanOf(unsigned)));
    assert.ok(Math.abs((sampleStandardDeviation(unsigned) ?? 0) - 0.564) < 0.015);
    assert.ok(Math.abs(meanOf(signed) - 180) < 0.02, String(meanOf(signed)));
    assert.ok(Math.max(...signed) > 180 && Math.max(...unsigned) <= 180);
  });

  it('a split beyond straight reads more than 180 [C]', () => {
    printed(openingAngle(limbs(205, 300), 'clockwise'), '205.000000');
    printed(jointAngle(limbs(205, 300)), '155.000000');
    printed(openingAngle(limbs(205, 300), 'anticlockwise'), '155.000000');
  });
});
