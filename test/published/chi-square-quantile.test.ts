// Checks of the chi-square quantile.
// Sources: NIST/SEMATECH e-Handbook 1.3.6.7.4, lower critical values [R, copied table]; a published table with five
// decimals [R, University of Namibia examination paper]; jStat as oracle; two degrees of freedom have the closed form
// -2 ln(1 - p) [C].
import assert from 'node:assert/strict';
import jstat from 'jstat';
import { describe, it } from 'mocha';
import { chiSquareCumulative, chiSquareQuantile } from '../../src/training/statistics/chi-square-quantile';
import { printed, printedRow } from './printed';

describe('published: chi-square quantile', () => {
  it('NIST/SEMATECH e-Handbook 1.3.6.7.4, lower critical values [R]', () => {
    const chances = [0.1, 0.05, 0.025, 0.01, 0.001];
    const rows: readonly (readonly [number, string])[] = [
      [2, '0.211 0.103 0.051 0.020 0.002'],
      [10, '4.865 3.940 3.247 2.558 1.479'],
      [20, '12.443 10.851 9.591 8.260 5.921'],
      [60, '46.459 43.188 40.482 37.485 31.738'],
    ];
    for (const [degreesOfFreedom, texts] of rows) {
      printedRow(
        chances.map((chance) => chiSquareQuantile(chance, degreesOfFreedom)),
        texts,
      );
    }
  });

  it('a table with five decimals, upper tail [R]', () => {
    printed(chiSquareQuantile(0.95, 1), '3.84146');
    printed(chiSquareQuantile(0.95, 2), '5.99146');
    printed(chiSquareQuantile(0.95, 10), '18.30704');
    printed(chiSquareQuantile(0.975, 10), '20.48318');
    printed(chiSquareQuantile(0.025, 10), '3.24697');
    printed(chiSquareQuantile(0.025, 1), '0.00098');
  });

  it('two degrees of freedom in closed form, and a reference library [C]', () => {
    for (const p of [0.0001, 0.025, 0.3, 0.5, 0.975, 0.999]) {
      assert.ok(Math.abs(chiSquareQuantile(p, 2) / (-2 * Math.log1p(-p)) - 1) < 1e-12);
      for (const degreesOfFreedom of [1, 3, 6, 9, 28, 150]) {
        const x = chiSquareQuantile(p, degreesOfFreedom);
        const oracle = jstat.jStat.chisquare.inv(p, degreesOfFreedom);
        assert.ok(Math.abs(x / oracle - 1) < 1e-6, `jStat ${p}, ${degreesOfFreedom}: ${x}, ${oracle}`);
        assert.ok(Math.abs(chiSquareCumulative(x, degreesOfFreedom) / p - 1) < 1e-11);
      }
    }
  });
});
