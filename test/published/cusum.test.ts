// Checks of the tabular cumulative sum.
// Source: NIST/SEMATECH e-Handbook 6.3.2.3 [F]; unrounded values [C].
import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import { tabularCusum } from '../../src/training/statistics/cusum';
import { sum } from '../../src/training/statistics/moments';
import { at } from './estimated';
import { printed } from './printed';

const values = [
  324.925, 324.675, 324.725, 324.35, 325.35, 325.225, 324.125, 324.525, 325.225, 324.6, 324.625, 325.15,
  328.325, 327.25, 327.825, 328.5, 326.675, 327.775, 326.875, 328.35,
];
const chart = tabularCusum(values, { target: 325, slack: 0.3175, limit: 4.1959 });

describe('published: tabular cumulative sum', () => {
  it('NIST/SEMATECH 6.3.2.3: both sums as printed [F]', () => {
    // The handbook carries rounded values on, so its last digit may be one off.
    const high = [0, 0, 0, 0, 0.03, 0, 0, 0, 0, 0, 0, 0, 3.01, 4.94, 7.45, 10.63, 11.99, 14.44, 16.0, 19.04];
    const low = [0, 0.01, 0, 0.33, 0, 0, 0.56, 0.72, 0.17, 0.25, 0.31, 0];
    assert.equal(chart.n, 20);
    for (const [i, value] of high.entries())
      assert.ok(Math.abs(at(chart.high, i) - value) <= 0.006, `high ${i + 1}`);
    for (const [i, value] of low.entries())
      assert.ok(Math.abs(at(chart.low, i) - value) <= 0.006, `low ${i + 1}`);
  });

  it('NIST/SEMATECH 6.3.2.3: the first alarm is sample 14 [F]', () => {
    assert.equal(at(chart.alarms, 0) + 1, 14);
  });

  it('unrounded sums [C]', () => {
    const high: readonly (readonly [number, string])[] = [
      [5, '0.0325'],
      [13, '3.0075'],
      [14, '4.94'],
      [15, '7.4475'],
      [16, '10.63'],
      [17, '11.9875'],
      [18, '14.445'],
      [19, '16.0025'],
      [20, '19.035'],
    ];
    const low: readonly (readonly [number, string])[] = [
      [2, '0.0075'],
      [4, '0.3325'],
      [7, '0.5575'],
      [8, '0.715'],
      [9, '0.1725'],
      [10, '0.255'],
      [11, '0.3125'],
    ];
    for (const [sample, text] of high) printed(at(chart.high, sample - 1), text);
    for (const [sample, text] of low) printed(at(chart.low, sample - 1), text);
    printed(sum(values.map((value) => value - 325)), '19.075');
  });
});
