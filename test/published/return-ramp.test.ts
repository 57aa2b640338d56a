// Checks of the return after a break.
// Source: Caterisano A et al (2019) Strength Cond J 41(3):1-23, the 50/30/20/10 rule [R utahorthopaedics.com]; two
// weeks only for returning athletes [M]. Borrowed from American college football. Numbers recomputed [C].
import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import { RETURN_CUTS, returnRamp } from '../../src/training/statistics/return-ramp';

describe('published: return ramp', () => {
  it('1000 units: 500, 700, 800, 900, then 1000 [R rule, C numbers]', () => {
    const { n, weeks } = returnRamp(1000);
    assert.equal(n, 5);
    assert.deepEqual(
      weeks.map(({ limit }) => limit),
      [500, 700, 800, 900, 1000],
    );
    assert.deepEqual(
      weeks.map(({ cutPercent }) => cutPercent),
      [50, 30, 20, 10, 0],
    );
  });

  it('two weeks for a returning athlete: 500, 700, then 1000 [M]', () => {
    assert.deepEqual(
      returnRamp(1000, RETURN_CUTS.slice(0, 2)).weeks.map(({ limit }) => limit),
      [500, 700, 1000],
    );
  });
});
