// Checks of session-RPE load, monotony and strain.
// Sources of the formulas: Foster C (1998) Med Sci Sports Exerc 30(7):1164-1168, abstract: monotony = daily mean /
// standard deviation, strain = load x monotony [R]; Foster C et al (2001) J Strength Cond Res 15(1):109-115. The
// worked weeks are recomputed [C]; the sample standard deviation is this project's stated choice.
import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import { sessionLoad, weekLoad } from '../../src/training/statistics/session-load';
import { estimated } from './estimated';
import { printed } from './printed';

describe('published: session load', () => {
  it('rating x minutes: 20 minutes at 6 are 120 units (Foster 2001) [C]', () => {
    assert.equal(sessionLoad(6, 20), 120);
  });

  it('three worked weeks, sample standard deviation [C]', () => {
    const weeks: readonly (readonly [loads: readonly number[], total: number, texts: string])[] = [
      [[300, 0, 480, 180, 0, 540, 120], 1620, '231.428571 217.518472 1.063949 1723.5975'],
      [[540, 360, 540, 0, 540, 360, 0], 2340, '334.285714 242.133375 1.380585 3230.5690'],
      [[400, 0, 200, 500, 0, 300, 0], 1400, '200 208.166600 0.960769 1345.0765'],
    ];
    for (const [loads, total, texts] of weeks) {
      const [mean = '', spread = '', monotony = '', strain = ''] = texts.split(' ');
      const week = estimated(weekLoad(loads));
      assert.equal(week.n, 7);
      assert.equal(week.total, total);
      printed(week.mean, mean);
      printed(week.standardDeviation, spread);
      printed(numberOf(week.monotony), monotony);
      printed(numberOf(week.strain), strain);
    }
  });

  it('population figures are the sample ones times sqrt(7/6) = 1.080123 [C]', () => {
    const weeks: readonly (readonly [loads: readonly number[], texts: string])[] = [
      [[300, 0, 480, 180, 0, 540, 120], '201.382974 1.149196 1861.6980'],
      [[540, 360, 540, 0, 540, 360, 0], '224.171946 1.491202 3489.4133'],
      [[400, 0, 200, 500, 0, 300, 0], '192.724822 1.037749 1452.8487'],
    ];
    printed(Math.sqrt(7 / 6), '1.080123');
    for (const [loads, texts] of weeks) {
      const [spread = '', monotony = '', strain = ''] = texts.split(' ');
      const week = estimated(weekLoad(loads));
      printed(numberOf(week.standardDeviation) / Math.sqrt(7 / 6), spread);
      printed(numberOf(week.monotony) * Math.sqrt(7 / 6), monotony);
      printed(numberOf(week.strain) * Math.sqrt(7 / 6), strain);
    }
  });

  it('rest days count: dropping the zeros of week one would give 1.770730, and does not [C]', () => {
    const { monotony } = estimated(weekLoad([300, 0, 480, 180, 0, 540, 120]));
    assert.ok(Math.abs(numberOf(monotony) - 1.77073) > 0.5);
  });

  it('k equal sessions in seven days: sqrt(6k/(7(7 - k))) whatever their load [C]', () => {
    const texts = ['0.377964', '0.585540', '0.801784', '1.069045', '1.463850', '2.267787'];
    for (const [i, text] of texts.entries()) {
      for (const load of [60, 345, 0.1]) {
        const days = Array.from({ length: 7 }, (_, day) => (day <= i ? load : 0));
        printed(numberOf(estimated(weekLoad(days)).monotony), text);
      }
    }
  });

  it('seven alike days and seven rest days have no monotony [C]', () => {
    const alike = estimated(weekLoad(new Array<number>(7).fill(0.1)));
    assert.deepEqual(alike.monotony, { status: 'not-estimable', n: 7, reason: 'no-variation', missing: [] });
    const rest = estimated(weekLoad(new Array<number>(7).fill(0)));
    assert.deepEqual(rest.strain, { status: 'not-estimable', n: 7, reason: 'no-load', missing: [] });
  });
});

function numberOf(value: unknown): number {
  assert.equal(typeof value, 'number', JSON.stringify(value));
  return Number(value);
}
