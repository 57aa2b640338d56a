// Checks of typical error, minimal detectable change and their intervals.
import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import {
  limitsOfAgreement,
  minimalDetectableChange,
  standardDeviationFactors,
  typicalErrorFromRepeats,
  typicalErrorFromTrials,
} from '../../src/training/statistics/measuring-error';
import { estimated, paired } from './estimated';
import { printed } from './printed';

/** Weir JP (2005) J Strength Cond Res 19(1):231-240, data set A. */
const weirA = paired([146, 148, 170, 90, 157, 156, 176, 205], [140, 152, 152, 99, 145, 153, 167, 218]);
/** The same paper, data set B: the same differences in a narrower range [M data]. */
const weirB = paired([166, 168, 160, 150, 147, 146, 156, 155], [160, 172, 142, 159, 135, 143, 147, 168]);

/** The sources multiply by 1.96, the code by 1.959964: this turns one into the other. */
const TABLE_Z = 1.96 / 1.959963984540054;

const rows = (points: typeof weirA) => points.map(({ x, y }) => [x, y] as const);

/** Intraclass correlations from the mean squares, as the paper defines them, for two trials. */
function intraclass(points: typeof weirA) {
  const { meanSquares, subjects, trials } = estimated(typicalErrorFromTrials(rows(points)));
  const { subjects: mss, trials: mst, error: mse } = meanSquares;
  const within = (mst * (trials - 1) + mse * (subjects - 1) * (trials - 1)) / (subjects * (trials - 1));
  return {
    within,
    icc11: (mss - within) / (mss + (trials - 1) * within),
    icc21: (mss - mse) / (mss + (trials - 1) * mse + (trials * (mst - mse)) / subjects),
    icc31: (mss - mse) / (mss + (trials - 1) * mse),
  };
}

describe('published: measuring error', () => {
  it('Weir (2005) data set A, p. 236: standard error of measurement 7.6 [F]; typical error 7.556927 [C]', () => {
    const error = estimated(typicalErrorFromTrials(rows(weirA)));
    printed(error.typicalError, '7.6');
    printed(error.typicalError, '7.556927');
    assert.equal(error.degreesOfFreedom, 7);
    assert.equal(error.n, 16);
    assert.equal(error.subjects, 8);
    printed(error.meanChange, '-2.75');
  });

  it('Weir (2005) data set A: mean squares and intraclass correlations [C]', () => {
    const { meanSquares } = estimated(typicalErrorFromTrials(rows(weirA)));
    printed(meanSquares.subjects, '2098.5357');
    printed(meanSquares.trials, '30.25');
    printed(meanSquares.error, '57.1071');
    const { within, icc11, icc21, icc31 } = intraclass(weirA);
    printed(within, '53.75');
    printed(icc11, '0.9501');
    printed(icc21, '0.9500');
    printed(icc31, '0.9470');
  });

  it('Weir (2005) data set A: standard errors of prediction 10.2 and of estimation 7.1 [F]', () => {
    const { meanSquares } = estimated(typicalErrorFromTrials(rows(weirA)));
    // The paper's SD is that of all sixteen scores; its correlation is ICC(3,1) rounded to 0.95.
    const total = Math.sqrt((meanSquares.subjects * 7 + meanSquares.trials + meanSquares.error * 7) / 15);
    const r = intraclass(weirA).icc31;
    printed(total * Math.sqrt(1 - r * r), '10.2');
    printed(total * Math.sqrt(r * (1 - r)), '7.1');
  });

  it('Weir (2005) data set A: SD sqrt(1 - ICC(3,1)) is another figure, 7.3080, and not the typical error [C]', () => {
    const { meanSquares, typicalError } = estimated(typicalErrorFromTrials(rows(weirA)));
    const total = Math.sqrt((meanSquares.subjects * 7 + meanSquares.trials + meanSquares.error * 7) / 15);
    const other = total * Math.sqrt(1 - intraclass(weirA).icc31);
    printed(other, '7.3080');
    assert.ok(typicalError - other > 0.2);
  });

  it('Weir (2005) data set A: minimal detectable change 20.9467 at 95 % and 17.5803 at 90 % [C]', () => {
    const { typicalError } = estimated(typicalErrorFromTrials(rows(weirA)));
    printed(minimalDetectableChange(typicalError, 0.95) * TABLE_Z, '20.9467');
    printed((minimalDetectableChange(typicalError, 0.9) * 1.645) / 1.6448536269514722, '17.5803');
  });

  it('Weir (2005) data set A: limits of agreement -18.1967 to 23.6967 about 2.75 [C]', () => {
    // First minus second trial, as the source subtracts.
    const limits = limitsOfAgreement(weirA.map(({ x, y }) => [y, x] as const));
    printed(limits?.meanDifference, '2.75');
    printed(limits?.standardDeviation, '10.687108');
    printed(limits?.lower, '-18.1967');
    printed(limits?.upper, '23.6967');
    assert.equal(limits?.n, 8);
  });

  it('Weir (2005) data set B: a narrow range ruins the correlation and leaves the typical error [M data, C]', () => {
    const a = estimated(typicalErrorFromTrials(rows(weirA)));
    const b = estimated(typicalErrorFromTrials(rows(weirB)));
    printed(b.meanSquares.subjects, '189.9643');
    printed(intraclass(weirB).icc21, '0.5527');
    printed(intraclass(weirB).icc31, '0.5377');
    assert.ok(Math.abs(a.typicalError - b.typicalError) < 1e-9);
  });

  it('typical error of two trials is SD of the differences over sqrt 2 [Hopkins 2000, de Vet: R]', () => {
    const { typicalError } = estimated(typicalErrorFromTrials(rows(weirA)));
    const limits = limitsOfAgreement(rows(weirA));
    assert.ok(Math.abs(typicalError - (limits?.standardDeviation ?? 0) / Math.SQRT2) < 1e-12);
    // de Vet's minimal detectable difference is 1.96 SD of the differences [R pmc PMC6558857 table 1].
    const detectable = minimalDetectableChange(typicalError);
    assert.ok(Math.abs(detectable - 1.959964 * (limits?.standardDeviation ?? 0)) < 1e-5);
  });

  it('three days with three angle readings each: 1.290994, interval, detectable changes [C]', () => {
    const error = estimated(
      typicalErrorFromRepeats([
        [92, 94, 93],
        [95, 97, 96],
        [91, 94, 94],
      ]),
    );
    printed(error.typicalError, '1.290994');
    assert.equal(error.degreesOfFreedom, 6);
    assert.equal(error.n, 9);
    printed(error.interval.lower, '0.8319');
    printed(error.interval.upper, '2.8429');
    printed(minimalDetectableChange(error.typicalError) * TABLE_Z, '3.5785');
    printed(minimalDetectableChange(error.typicalError, 0.95, 3) * TABLE_Z, '2.0660');
    assert.deepEqual(error.shortOfRecommended, []);
  });

  it('root mean square of the SDs 5.7, 4.2, 5.7, 2.8, 2.1 is 4.3559 [formula R wwrichard.net; C]', () => {
    const pairs = [5.7, 4.2, 5.7, 2.8, 2.1].map((sd) => [70 - sd / Math.SQRT2, 70 + sd / Math.SQRT2]);
    printed(estimated(typicalErrorFromRepeats(pairs)).typicalError, '4.3559');
  });

  it('factors of the 95 % interval [C]', () => {
    const factors: readonly (readonly [degreesOfFreedom: number, lower: string, upper: string])[] = [
      [9, '0.6878', '1.8256'],
      [19, '0.7605', '1.4606'],
      [49, '0.8353', '1.2461'],
      [28, '0.7936', '1.3525'],
    ];
    for (const [degreesOfFreedom, lower, upper] of factors) {
      printed(standardDeviationFactors(degreesOfFreedom).lower, lower);
      printed(standardDeviationFactors(degreesOfFreedom).upper, upper);
    }
  });

  it('factors 2.7719 and 2.3262 from standard error to detectable change [C]', () => {
    printed(minimalDetectableChange(1, 0.95) * TABLE_Z, '2.7719');
    printed(minimalDetectableChange(1, 0.95), '2.7718');
    printed(minimalDetectableChange(1, 0.9), '2.3262');
  });

  it('published reliability: sit and reach 1.4 and 1.3 cm make 4 cm; straight-leg raise [R PMC3737781 table 1]', () => {
    const row: readonly (readonly [standardError: number, whole: string])[] = [
      [1.4, '4'],
      [1.3, '4'],
      [2.8, '8'],
      [3.0, '8'],
      [4.0, '11'],
      [4.2, '12'],
    ];
    for (const [standardError, whole] of row) printed(minimalDetectableChange(standardError), whole);
  });
});
