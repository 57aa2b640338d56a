// Checks of the Mann-Kendall test.
import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import { exactUpperTail, kendallScore } from '../../src/training/statistics/kendall-score';
import { mannKendall } from '../../src/training/statistics/mann-kendall';
import { estimated, paired, series } from './estimated';
import { printed } from './printed';

describe('published: Mann-Kendall test', () => {
  it('EPA QA/G-9S (2006) p. 109: S = 22, Var = 155.33, Z = 1.685 [R]; p = 0.091998 [C]', () => {
    const test = estimated(mannKendall(series(10, 10, 10, 5, 10, 20, 18, 17, 15, 24, 15)));
    assert.equal(test.n, 11);
    assert.equal(test.s, 22);
    printed(test.variance, '155.33');
    printed(test.z, '1.685');
    printed(test.p, '0.091998');
    assert.equal(test.method, 'normal');
  });

  it('Gilbert (1987) example 16.3, ties in time and value: S = 19 [F], Var 58.1 and Z 2.4 [M]', () => {
    const test = estimated(mannKendall(paired([1, 1, 1, 2, 3, 3, 4, 5], [10, 22, 21, 30, 22, 30, 40, 40])));
    assert.equal(test.s, 19);
    printed(test.variance, '58.1');
    printed(test.z, '2.4');
    // To more digits [C].
    printed(test.variance, '58.0952');
    printed(test.z, '2.361578');
    printed(test.p, '0.018197');
  });

  it('Gilbert (1987) p. 211: variance with ties 83.66667 [F]', () => {
    printed(kendallScore(series(23, 24, 0, 6, 0, 24, 24, 0, 23)).variance, '83.66667');
  });

  it('10, 15, 14, 20: S = 4, variance 8.6667 [F, C]', () => {
    const score = kendallScore(series(10, 15, 14, 20));
    assert.equal(score.s, 4);
    printed(score.variance, '8.6667');
  });

  it('College of the Holy Cross, worked by hand: S = 54, one tie, Z about 2.9058 [R mathcs.holycross.edu/~little]', () => {
    const test = estimated(
      mannKendall(series(12.9, 14.8, 13.2, 15.7, 13.8, 15.6, 12.9, 11.0, 17.3, 15.9, 19.0, 18.3, 20.1, 21.7)),
    );
    assert.equal(test.s, 54);
    assert.ok(Math.abs(test.variance - (14 * 13 * 33 - 2 * 1 * 9) / 18) < 1e-9);
    printed(test.z, '2.9058');
    printed(test.p / 2, '0.0018');
  });

  it('one outlier of seven: tau 0.904762, exact p 0.0027778 [data M, C]', () => {
    const test = estimated(mannKendall(series(1, 2, 3, 4, 5, 16, 7)));
    printed(test.tau, '0.904762');
    printed(test.p, '0.0027778');
    assert.equal(test.method, 'exact');
  });

  it('exact upper tails without ties, n = 4..10 [C; the table of Gilbert (1987) A18 prints the same to three digits, M]', () => {
    const rows: readonly (readonly [n: number, s: number, text: string])[] = [
      [4, 6, '0.04167'],
      [4, 4, '0.16667'],
      [5, 10, '0.00833'],
      [5, 8, '0.04167'],
      [5, 6, '0.11667'],
      [6, 15, '0.00139'],
      [6, 13, '0.00833'],
      [6, 11, '0.02778'],
      [6, 9, '0.06806'],
      [7, 21, '0.0002'],
      [7, 15, '0.01508'],
      [7, 13, '0.03452'],
      [7, 11, '0.06806'],
      [8, 18, '0.01558'],
      [8, 16, '0.03051'],
      [8, 14, '0.05434'],
      [10, 23, '0.02331'],
      [10, 21, '0.03628'],
      [10, 19, '0.05416'],
    ];
    for (const [n, s, text] of rows) printed(exactUpperTail(n, s), text, `n ${n}, S ${s}:`);
  });

  it('the exact tails are those of all orders, counted one by one [C]', () => {
    for (const n of [1, 2, 3, 4, 5, 6]) {
      const scores = permutations(Array.from({ length: n }, (_, i) => i)).map(
        (order) => kendallScore(series(...order)).s,
      );
      for (let s = -(n * (n - 1)) / 2; s <= (n * (n - 1)) / 2; s++) {
        const share = scores.filter((score) => score >= s).length / scores.length;
        assert.ok(Math.abs(exactUpperTail(n, s) - share) < 1e-12, `n ${n}, S ${s}`);
      }
    }
  });
});

function permutations(values: readonly number[]): readonly (readonly number[])[] {
  if (values.length === 0) return [[]];
  return values.flatMap((value) =>
    permutations(values.filter((other) => other !== value)).map((rest) => [value, ...rest]),
  );
}
