// Checks of Student's t quantile.
// Sources: NIST/SEMATECH e-Handbook 1.3.6.7.2, upper critical values [R, copied table]; @stdlib and jStat as oracles.
import assert from 'node:assert/strict';
import stdlibTQuantile from '@stdlib/stats-base-dists-t-quantile';
import jstat from 'jstat';
import { describe, it } from 'mocha';
import { studentTCumulative, studentTQuantile } from '../../src/training/statistics/student-t-quantile';
import { printed } from './printed';

describe("published: Student's t quantile", () => {
  it('NIST/SEMATECH e-Handbook 1.3.6.7.2 [R]', () => {
    const columns = [0.9, 0.95, 0.975, 0.99, 0.995];
    const rows: readonly (readonly [number, string])[] = [
      [1, '3.078 6.314 12.706 31.821 63.657'],
      [2, '1.886 2.920 4.303 6.965 9.925'],
      [5, '1.476 2.015 2.571 3.365 4.032'],
      [10, '1.372 1.812 2.228 2.764 3.169'],
      [30, '1.310 1.697 2.042 2.457 2.750'],
      [100, '1.290 1.660 1.984 2.364 2.626'],
    ];
    for (const [degreesOfFreedom, texts] of rows) {
      for (const [i, text] of texts.split(' ').entries()) {
        printed(studentTQuantile(columns[i] ?? 0, degreesOfFreedom), text, `df ${degreesOfFreedom}:`);
      }
    }
  });

  it('agrees with two reference libraries [C]', () => {
    for (const degreesOfFreedom of [1, 2, 3, 7, 12.5, 29, 200]) {
      for (const p of [0.001, 0.025, 0.2, 0.5, 0.6, 0.9, 0.995]) {
        const t = studentTQuantile(p, degreesOfFreedom);
        const size = 1 + Math.abs(t);
        assert.ok(
          Math.abs(t - stdlibTQuantile(p, degreesOfFreedom)) < 1e-10 * size,
          `@stdlib ${p}, ${degreesOfFreedom}`,
        );
        assert.ok(
          Math.abs(t - jstat.jStat.studentt.inv(p, degreesOfFreedom)) < 1e-7 * size,
          `jStat ${p}, ${degreesOfFreedom}`,
        );
        assert.ok(Math.abs(studentTCumulative(t, degreesOfFreedom) / p - 1) < 1e-11, `back to ${p}`);
      }
    }
  });
});
