import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import { maximumLikelihoodLogistic } from '../../../src/training/statistics/logistic-maximum-likelihood';
import { predictorAtChance } from '../../../src/training/statistics/logistic-model';
import { type RecoveryPair, recoveryInterval } from '../../../src/training/statistics/recovery-interval';
import { at, estimated, refused } from '../../published/estimated';

const question = { defaultGapHours: 48, acceptedChance: 0.2 };

function pairsOf(hours: readonly number[], sore: readonly number[]): readonly RecoveryPair[] {
  return hours.map((gap, i) => ({ hours: gap, sore: at(sore, i) === 1 }));
}

const toy = pairsOf([24, 24, 36, 48, 48, 48, 60, 72, 72, 96, 96, 120], [1, 1, 1, 1, 0, 1, 0, 1, 0, 0, 0, 0]);

describe('the recovery interval', () => {
  it('says "not enough notes yet" and what is missing with 0, 1, 2 and 3 pairs', () => {
    for (const have of [0, 1, 2, 3]) {
      const few = toy.slice(0, have);
      const result = refused(recoveryInterval(few, question));
      assert.equal(result.reason, 'too-few-pairs');
      assert.equal(result.n, have);
      assert.deepEqual(result.missing, [
        { what: 'pairs', have, need: 12 },
        { what: 'still-sore', have, need: 4 },
        { what: 'ready', have: 0, need: 4 },
      ]);
    }
  });

  it('names only what is missing: twelve pairs, too few of them sore', () => {
    const easy = toy.map((pair, i) => ({ ...pair, sore: i < 3 }));
    assert.deepEqual(refused(recoveryInterval(easy, question)).missing, [
      { what: 'still-sore', have: 3, need: 4 },
    ]);
  });

  it('learns nothing from gaps that are all alike', () => {
    const alike = toy.map((pair, i) => ({ ...pair, hours: 48 + (i % 3) }));
    assert.equal(refused(recoveryInterval(alike, question)).reason, 'hours-vary-little');
  });

  it('gives no gap when soreness does not fall with time', () => {
    const upside = toy.map((pair) => ({ ...pair, sore: !pair.sore }));
    assert.equal(refused(recoveryInterval(upside, question)).reason, 'soreness-does-not-fall');
  });

  it('is finite for notes that a gap divides without error, between the gaps that divide them', () => {
    const divided = pairsOf(
      [24, 24, 30, 36, 40, 48, 60, 72, 72, 96, 96, 120],
      [1, 1, 1, 1, 1, 1, 0, 0, 0, 0, 0, 0],
    );
    const found = estimated(recoveryInterval(divided, { ...question, acceptedChance: 0.5 }));
    assert.ok(found.hours > 48 && found.hours < 60, String(found.hours));
  });

  it('moves with the hours when the default gap moves along', () => {
    const later = toy.map((pair) => ({ ...pair, hours: pair.hours + 10 }));
    const before = estimated(recoveryInterval(toy, question));
    const after = estimated(recoveryInterval(later, { ...question, defaultGapHours: 58 }));
    assert.ok(Math.abs(after.hours - before.hours - 10) < 1e-6);
    assert.ok(Math.abs(after.interval.upper - before.interval.upper - 10) < 1e-6);
  });

  it('asks a longer gap for a smaller accepted chance', () => {
    const gaps = [0.5, 0.3, 0.2, 0.1].map(
      (acceptedChance) => estimated(recoveryInterval(toy, { ...question, acceptedChance })).hours,
    );
    assert.deepEqual(
      [...gaps].sort((a, b) => a - b),
      gaps,
    );
  });

  it('leans on the default gap with few notes, and forgets it with many', () => {
    const spreadOf = (times: number): number => {
      const notes = Array.from({ length: times }, () => toy).flat();
      const [short, long] = [36, 84].map(
        (defaultGapHours) => estimated(recoveryInterval(notes, { ...question, defaultGapHours })).hours,
      );
      return Math.abs((long ?? 0) - (short ?? 0));
    };
    assert.ok(spreadOf(1) > spreadOf(4) && spreadOf(4) > spreadOf(40));
    const plain = estimated(
      maximumLikelihoodLogistic(toy.map(({ hours, sore }) => ({ predictors: [hours], outcome: sore }))),
    );
    const many = Array.from({ length: 200 }, () => toy).flat();
    const found = estimated(recoveryInterval(many, question)).hours;
    assert.ok(Math.abs(found - estimated(predictorAtChance(plain, 0.2)).value) < 0.2);
  });

  it('says when the gap lies outside the gaps that were seen', () => {
    const short = pairsOf(
      [12, 14, 16, 20, 24, 24, 26, 28, 30, 32, 36, 36],
      [1, 1, 1, 1, 1, 0, 1, 0, 1, 0, 1, 0],
    );
    const found = estimated(recoveryInterval(short, { ...question, acceptedChance: 0.1 }));
    assert.equal(found.beyondObserved, 'longer');
    assert.deepEqual(found.observed, { lower: 12, upper: 36 });
    assert.ok(found.interval.lower >= 0);
  });

  it('leaves the load out while there is too little of it', () => {
    const loaded = toy.map((pair, i) => ({ ...pair, load: 300 + 20 * i }));
    assert.equal(estimated(recoveryInterval(loaded, question)).typicalLoad, undefined);
    assert.equal(estimated(recoveryInterval(loaded, question)).fit.coefficients.length, 2);
  });
});
