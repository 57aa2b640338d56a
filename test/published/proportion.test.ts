// Checks of the intervals of a share.
// Sources: Newcombe RG (1998) Stat Med 17:857-872 table I, method 3 [F]; VassarStats worked input 23/60
// [R vassarstats.net/prop1.html]; all other digits recomputed from the formulas [C].
import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import {
  clopperPearson,
  jeffreys,
  wilson,
  wilsonContinuityCorrected,
} from '../../src/training/statistics/proportion';
import { printed } from './printed';

type Method = typeof wilson;
type Row = readonly [successes: number, n: number, lower: string, upper: string];

function check(method: Method, rows: readonly Row[]): void {
  for (const [successes, n, lower, upper] of rows) {
    const found = method(successes, n);
    assert.ok(found);
    assert.equal(found.n, n);
    assert.equal(found.proportion, successes / n);
    printed(found.lower, lower, `${successes}/${n} lower:`);
    printed(found.upper, upper, `${successes}/${n} upper:`);
  }
}

describe('published: intervals of a share', () => {
  it('Newcombe (1998) table I, method 3, Wilson [F]', () => {
    check(wilson, [
      [81, 263, '0.2553', '0.3662'],
      [15, 148, '0.0624', '0.1605'],
      [0, 20, '0.0000', '0.1611'],
    ]);
  });

  it('Wilson to six digits [C]', () => {
    check(wilson, [
      [81, 263, '0.255289', '0.366210'],
      [15, 148, '0.062386', '0.160487'],
      [0, 20, '0', '0.161125'],
      [0, 10, '0', '0.277533'],
      [5, 10, '0.236593', '0.763407'],
      [9, 10, '0.595850', '0.982124'],
      [10, 10, '0.722467', '1'],
      [3, 4, '0.300642', '0.954413'],
      [23, 60, '0.270883', '0.509824'],
    ]);
    // 10/13.841459, as n/(n + z2).
    printed(wilson(10, 10)?.lower, (10 / 13.841459).toFixed(6));
  });

  it('Wilson with continuity correction [C]; 23/60 is the worked input of VassarStats [R]', () => {
    check(wilsonContinuityCorrected, [
      [81, 263, '0.253509', '0.368176'],
      [15, 148, '0.059778', '0.164450'],
      [0, 20, '0', '0.200453'],
      [23, 60, '0.263528', '0.518099'],
    ]);
  });

  it('Jeffreys [C]', () => {
    check(jeffreys, [
      [81, 263, '0.254522', '0.365647'],
      [15, 148, '0.060449', '0.157643'],
      [0, 20, '0', '0.116639'],
      [0, 10, '0', '0.217196'],
      [5, 10, '0.223529', '0.776471'],
      [9, 10, '0.618685', '0.988988'],
      [10, 10, '0.782804', '1'],
      [3, 4, '0.283752', '0.971529'],
    ]);
  });

  it('Clopper-Pearson [C]', () => {
    check(clopperPearson, [
      [81, 263, '0.252737', '0.367622'],
      [15, 148, '0.057844', '0.161650'],
      [0, 20, '0', '0.168433'],
      [0, 10, '0', '0.308497'],
      [5, 10, '0.187086', '0.812914'],
      [9, 10, '0.554984', '0.997471'],
      [10, 10, '0.691503', '1'],
      [3, 4, '0.194120', '0.993691'],
    ]);
  });
});
