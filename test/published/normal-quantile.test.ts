// Checks of the standard normal quantile.
// Sources: NIST/SEMATECH e-Handbook 1.3.6.7.2, last row of the t table (infinite degrees of freedom) [R, copied table];
// 1.959963984540054 is the double nearest to the 97.5 % quantile [C, 50-digit arithmetic]; @stdlib and jStat as oracles.
import assert from 'node:assert/strict';
import stdlibNormalQuantile from '@stdlib/stats-base-dists-normal-quantile';
import jstat from 'jstat';
import { describe, it } from 'mocha';
import { normalCumulative, normalQuantile, twoSidedZ } from '../../src/training/statistics/normal-quantile';
import { printed } from './printed';

describe('published: normal quantile', () => {
  it('NIST/SEMATECH e-Handbook 1.3.6.7.2, infinite degrees of freedom [R]', () => {
    const row: readonly (readonly [number, string])[] = [
      [0.9, '1.282'],
      [0.95, '1.645'],
      [0.975, '1.960'],
      [0.99, '2.326'],
      [0.995, '2.576'],
      [0.999, '3.090'],
    ];
    for (const [probability, text] of row) printed(normalQuantile(probability), text);
  });

  it('gives the 97.5 % quantile to the last digits [C]', () => {
    assert.ok(Math.abs(normalQuantile(0.975) - 1.959963984540054) < 2e-15);
    printed(twoSidedZ(0.95), '1.959964');
    printed(twoSidedZ(0.9), '1.644854');
  });

  it('agrees with two reference libraries from 1e-10 to 1 - 1e-10 [C]', () => {
    for (const p of [
      1e-10,
      1e-6,
      1e-3,
      0.02,
      0.024,
      0.025,
      0.1,
      0.3,
      0.5,
      0.7,
      0.9,
      0.975,
      0.98,
      0.9999,
      1 - 1e-10,
    ]) {
      const z = normalQuantile(p);
      // Both libraries are off by up to 1e-8 in the lower tail, jStat by 5e-8 in the upper one.
      assert.ok(Math.abs(z - stdlibNormalQuantile(p, 0, 1)) < 2e-8, `@stdlib at ${p}`);
      assert.ok(Math.abs(z - jstat.jStat.normal.inv(p, 0, 1)) < 1e-7, `jStat at ${p}`);
      assert.ok(Math.abs(normalCumulative(z) / p - 1) < 1e-12, `back to ${p}`);
    }
  });
});
