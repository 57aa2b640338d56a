// Checks of the recovery interval: the posterior mode under this project's own prior, recomputed with a general
// optimiser (scipy, Nelder-Mead on the log posterior) and the delta method written out anew [C]. The method is that of
// Gelman et al (2008) Ann Appl Stat 2:1360-1383; see the checks of logistic regression. The pairs are invented.
import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import { recoveryInterval } from '../../src/training/statistics/recovery-interval';
import { at, estimated } from './estimated';
import { printed } from './printed';

const hours = [24, 24, 36, 48, 48, 48, 60, 72, 72, 96, 96, 120];
const sore = [1, 1, 1, 1, 0, 1, 0, 1, 0, 0, 0, 0];
const pairs = hours.map((gap, i) => ({ hours: gap, sore: at(sore, i) === 1 }));

describe('published: recovery interval', () => {
  it('twelve pairs, by default gap and accepted chance [C]', () => {
    const rows: readonly (readonly [gap: number, chance: number, hours: string, error: string])[] = [
      [48, 0.2, '85.2336', '20.3479'],
      [72, 0.2, '83.2473', '16.7522'],
      [48, 0.5, '58.7626', '12.7995'],
    ];
    for (const [defaultGapHours, acceptedChance, text, error] of rows) {
      const found = estimated(recoveryInterval(pairs, { defaultGapHours, acceptedChance, confidence: 0.9 }));
      printed(found.hours, text);
      // The 90 % interval is 1.644854 standard errors wide on either side.
      printed((found.interval.upper - found.hours) / 1.644853627, error);
      assert.equal(found.n, 12);
      assert.equal(found.sore, 6);
      assert.equal(found.beyondObserved, 'no');
    }
  });

  it('the load of the first session joins in when there is enough of it [C]', () => {
    const loads = [
      300, 450, 500, 520, 240, 410, 260, 600, 330, 380, 290, 310, 420, 350, 480, 560, 200, 390, 300, 640, 310,
      360, 270, 330,
    ];
    const loaded = [...pairs, ...pairs].map((pair, i) => ({ ...pair, load: at(loads, i) }));
    const found = estimated(recoveryInterval(loaded, { defaultGapHours: 48, acceptedChance: 0.2 }));
    assert.equal(found.typicalLoad, 355);
    printed(found.hours, '68.2865');
    printed((found.interval.upper - found.hours) / 1.959963985, '12.6138');
  });
});
