// Checks of the beta quantile and the functions below it, against closed forms [C] and jStat as oracle [C].
import assert from 'node:assert/strict';
import jstat from 'jstat';
import { describe, it } from 'mocha';
import { lowerBetaTail } from '../../src/training/statistics/beta-function';
import { betaQuantile } from '../../src/training/statistics/beta-quantile';
import { logGamma } from '../../src/training/statistics/gamma-function';

describe('published: beta quantile', () => {
  it('closed forms: Beta(a, 1) is p^(1/a), Beta(1, b) is 1 - (1 - p)^(1/b), Beta(1/2, 1/2) is sin2(pi p/2) [C]', () => {
    for (const p of [0.001, 0.025, 0.4, 0.975]) {
      for (const a of [0.5, 1, 3, 21]) {
        assert.ok(Math.abs(betaQuantile(p, a, 1) - p ** (1 / a)) < 1e-13);
        assert.ok(Math.abs(betaQuantile(p, 1, a) - (1 - (1 - p) ** (1 / a))) < 1e-13);
      }
      assert.ok(Math.abs(betaQuantile(p, 0.5, 0.5) - Math.sin((Math.PI * p) / 2) ** 2) < 1e-13);
    }
  });

  it('agrees with a reference library [C]', () => {
    for (const p of [0.01, 0.025, 0.5, 0.975]) {
      for (const [a, b] of [
        [0.5, 10.5],
        [5.5, 5.5],
        [81.5, 182.5],
        [15, 134],
      ] as const) {
        const x = betaQuantile(p, a, b);
        assert.ok(Math.abs(x - jstat.jStat.beta.inv(p, a, b)) < 1e-7, `${p} ${a} ${b}`);
        assert.ok(Math.abs(lowerBetaTail(x, a, b) / p - 1) < 1e-11);
      }
    }
  });

  it('the gamma function below it: (n - 1)! and the half-integers [C]', () => {
    let factorial = 1;
    for (let n = 1; n <= 20; n++) {
      assert.ok(Math.abs(logGamma(n) - Math.log(factorial)) < 1e-13 * (1 + Math.abs(Math.log(factorial))));
      factorial *= n;
    }
    assert.ok(Math.abs(logGamma(0.5) - Math.log(Math.PI) / 2) < 1e-14);
    for (const x of [0.1, 1.7, 12.3, 250]) {
      assert.ok(Math.abs(logGamma(x) - jstat.jStat.gammaln(x)) < 1e-9 * (1 + Math.abs(logGamma(x))));
    }
  });
});
