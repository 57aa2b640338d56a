// Checks of the done -1, missed +2 score and of its average run lengths.
// Method: Page (1954); exact run lengths by Markov chain, Brook & Evans (1972) Biometrika 59:539-549 [M cite]. The
// numbers are recomputed [C].
import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import { adherenceScore, sessionsToAlarm } from '../../src/training/statistics/adherence-score';
import { printed } from './printed';

const done = [1, 1, 0, 1, 1, 1, 0, 0, 1, 0, 0, 1, 0, 0].map(Boolean);

describe('published: adherence score', () => {
  it('the scores of fourteen sessions [C]', () => {
    const { n, scores, alarms } = adherenceScore(done, 6);
    assert.deepEqual(scores, [0, 0, 2, 1, 0, 0, 2, 4, 3, 5, 7, 6, 8, 10]);
    assert.equal(n, 14);
    assert.deepEqual(alarms, [10, 11, 12, 13]);
  });

  it('mean sessions to an alarm at 80 % and at 50 % done, by limit [C]', () => {
    const rows: readonly (readonly [limit: number, usual: string, dropped: string])[] = [
      [4, '27.24', '5.60'],
      [5, '58.08', '8.00'],
      [6, '90.80', '9.54'],
      [7, '160.41', '11.71'],
      [8, '253.73', '13.53'],
      [9, '417.27', '15.60'],
      [10, '658.24', '17.53'],
    ];
    for (const [limit, usual, dropped] of rows) {
      printed(sessionsToAlarm(0.8, limit), usual, `limit ${limit}:`);
      printed(sessionsToAlarm(0.5, limit), dropped, `limit ${limit}:`);
    }
    // Recomputed with a linear solver; a simulation had given 20.6.
    printed(sessionsToAlarm(0.65, 6), '20.431');
  });

  it('a simulation of 20,000 alarms agrees with the chain [C, fixed generator]', () => {
    let state = 12345;
    const chance = (): number => {
      state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
      return state / 2 ** 32;
    };
    const runs = 20_000;
    for (const probability of [0.8, 0.5]) {
      let sessions = 0;
      for (let run = 0; run < runs; run++) {
        let score = 0;
        while (score < 6) {
          score = Math.max(0, score + (chance() < probability ? -1 : 2));
          sessions++;
        }
      }
      const expected = sessionsToAlarm(probability, 6);
      // The run length's standard deviation is about its mean: four standard errors.
      assert.ok(Math.abs(sessions / runs - expected) < (4 * expected) / Math.sqrt(runs));
    }
  });
});
