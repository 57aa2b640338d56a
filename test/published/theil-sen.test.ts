// Checks of the Theil-Sen line and Sen's interval.
import assert from 'node:assert/strict';
import { TheilSenRegression } from 'ml-regression-theil-sen';
import { describe, it } from 'mocha';
import { ascending } from '../../src/training/statistics/order-statistics';
import type { Point } from '../../src/training/statistics/point';
import { theilSen } from '../../src/training/statistics/theil-sen';
import { at, estimated, paired, series } from './estimated';
import { printed } from './printed';

const sen = paired([1, 2, 3, 4, 10, 12, 18], [9, 15, 19, 20, 45, 55, 78]);
const statpsych = paired(
  [67, 28, 30, 28, 52, 40, 25, 37, 44, 10, 14, 20, 28, 40, 51],
  [21, 4, 9, 12, 35, 18, 10, 22, 24, 1, 6, 8, 13, 16, 19],
);
const gilbert = paired([1, 1, 1, 2, 3, 3, 4, 5], [10, 22, 21, 30, 22, 30, 40, 40]);
const epa = series(10, 10, 10, 5, 10, 20, 18, 17, 15, 24, 15);

/** All slopes in order, written out anew so that the bounds of rounding conventions can be looked up. */
function slopesOf(points: readonly Point[]): readonly number[] {
  const slopes: number[] = [];
  for (let i = 0; i < points.length; i++) {
    for (let j = i + 1; j < points.length; j++) {
      const [a, b] = [at(points, i), at(points, j)];
      if (a.x !== b.x) slopes.push((a.y - b.y) / (a.x - b.x));
    }
  }
  return ascending(slopes);
}

describe('published: Theil-Sen slope', () => {
  it('Sen PK (1968) JASA 63:1379-1389, example: slope 4 [F]; both intercept conventions [F, C]', () => {
    const line = estimated(theilSen(sen, 0.93));
    assert.equal(line.n, 7);
    assert.equal(line.slopes, 21);
    assert.equal(line.slope, 4);
    assert.equal(line.intercept.joint, 6);
    assert.equal(line.intercept.separate, 4);
  });

  it('Sen (1968): the 93 % bounds 26/7 and 35/8 are the ordered slopes next to the interpolated ones [F]', () => {
    const slopes = slopesOf(sen);
    for (const confidence of [0.93, 0.95]) {
      const { interval } = estimated(theilSen(sen, confidence));
      assert.ok('lower' in interval);
      assertNextTo(slopes, interval.lower, 26 / 7);
      assertNextTo(slopes, interval.upper, 35 / 8);
    }
  });

  it('Sen (1968): the 21 slopes [F, corrected: the paper misprints some]', () => {
    const listed =
      '1 2.5 3.6667 3.7143 3.75 3.8333 3.9333 3.9375 4 4 4 4 4.0588 4.125 4.1429 4.1667 4.1818 4.375 5 5 6';
    const slopes = slopesOf(sen);
    for (const [i, text] of listed.split(' ').entries()) printed(slopes[i], text);
    assert.equal(estimated(theilSen(sen)).slopes, listed.split(' ').length);
  });

  it('statpsych, ci.theil documentation: slope 0.5 from 101 pairs, ties in x [R]', () => {
    const line = estimated(theilSen(statpsych));
    assert.equal(line.slope, 0.5);
    assert.equal(line.slopes, 101);
  });

  it('statpsych, ci.theil: 95 % bounds 0.3243243 and 0.75 are next to the interpolated ones [R]', () => {
    const { interval } = estimated(theilSen(statpsych));
    assert.ok('lower' in interval);
    assertNextTo(slopesOf(statpsych), interval.lower, 12 / 37);
    assertNextTo(slopesOf(statpsych), interval.upper, 0.75);
  });

  it('EPA QA/G-9S (2006) p. 109, data [R]: Sen slope 1.0 with 95 % interval 0..2 [C]', () => {
    const line = estimated(theilSen(epa));
    assert.equal(line.slope, 1);
    assert.deepEqual(line.interval, { lower: 0, upper: 2 });
  });

  it('Gilbert (1987) example 16.3, several values a period: 24 slopes, median 5.5 [C]', () => {
    const line = estimated(theilSen(gilbert));
    assert.equal(line.slopes, 24);
    assert.equal(line.slope, 5.5);
  });

  it('Gilbert (1987) example 16.3: interpolated bounds [C, numpy and scipy; 90 % as printed 2.6 and 9.3, M]', () => {
    const rows: readonly (readonly [number, string, string])[] = [
      [0.8, '4.0580', '8.8840'],
      [0.9, '2.5724', '9.2686'],
      [0.9, '2.6', '9.3'],
      [0.95, '0.2653', '10.0'],
    ];
    for (const [confidence, lower, upper] of rows) {
      const { interval } = estimated(theilSen(gilbert, confidence));
      assert.ok('lower' in interval);
      printed(interval.lower, lower, `${confidence}:`);
      printed(interval.upper, upper, `${confidence}:`);
    }
  });

  it('12,8,9,4,7,5,3,1 at x = 1..8: slope -1.5, joint intercept 13.5 [F]', () => {
    const line = estimated(theilSen(series(12, 8, 9, 4, 7, 5, 3, 1)));
    assert.equal(line.slope, -1.5);
    assert.equal(line.intercept.joint, 13.5);
  });

  it('one outlier of seven leaves the line alone, in the style of Helsel & Hirsch [data M, C]', () => {
    const line = estimated(theilSen(series(1, 2, 3, 4, 5, 16, 7)));
    assert.equal(line.slope, 1);
    assert.equal(line.intercept.joint, 0);
    assert.equal(line.intercept.separate, 0);
  });

  it('agrees with a reference library on the published data [C]', () => {
    for (const points of [sen, epa]) {
      const oracle = new TheilSenRegression(
        points.map(({ x }) => x),
        points.map(({ y }) => y),
      );
      assert.ok(Math.abs(estimated(theilSen(points)).slope - oracle.slope) < 1e-12);
    }
  });
});

/** A bound by rounded ranks is an ordered slope at most one place away from the interpolated bound. */
function assertNextTo(slopes: readonly number[], interpolated: number, published: number): void {
  const place = slopes.findIndex((slope) => Math.abs(slope - published) < 1e-7);
  assert.ok(place >= 0, `${published} is not among the slopes`);
  const below =
    slopes
      .slice(0, place)
      .filter((slope) => slope < published - 1e-9)
      .at(-1) ?? published;
  const above = slopes.slice(place).find((slope) => slope > published + 1e-9) ?? published;
  assert.ok(interpolated >= below && interpolated <= above, `${interpolated} is not beside ${published}`);
}
