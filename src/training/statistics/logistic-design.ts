import { type NotEstimable, notEstimable } from './estimate';
import { dot, type Matrix, sandwich, timesVector } from './linear-algebra';
import {
  inverseLogit,
  type LogisticFit,
  type LogisticObservation,
  type LogisticReason,
} from './logistic-model';
import { mean, sampleStandardDeviation } from './moments';

/** How an input is shifted and scaled before fitting: (x - centre) / unit. */
export interface InputScale {
  readonly centre: number;
  readonly unit: number;
}

/** Observations ready for Newton's method: scaled rows with a leading 1, outcomes as 0 and 1. */
export interface LogisticDesign {
  readonly n: number;
  readonly events: number;
  readonly rows: readonly (readonly number[])[];
  readonly outcomes: readonly number[];
  readonly inputs: readonly InputScale[];
}

/** What one step of Newton's method needs, at given coefficients. */
export interface LogisticState {
  readonly chances: readonly number[];
  readonly logLikelihood: number;
  readonly score: readonly number[];
  /** Fisher information X'WX. */
  readonly information: number[][];
}

/** Scales an input to mean 0 and standard deviation 1, for numerical steadiness. */
export function standardScale(column: readonly number[]): InputScale {
  return { centre: mean(column) ?? 0, unit: sampleStandardDeviation(column) ?? 0 };
}

/**
 * Scales the observations. Refuses what no method can fit: too few observations for the number of coefficients, or
 * an input that is the same in every one of them.
 */
export function logisticDesign(
  observations: readonly LogisticObservation[],
  scale: (column: readonly number[], position: number) => InputScale,
): LogisticDesign | NotEstimable<LogisticReason> {
  const n = observations.length;
  const width = observations[0]?.predictors.length ?? 0;
  if (observations.some(({ predictors }) => predictors.length !== width)) {
    throw new RangeError('Every observation needs the same predictors');
  }
  const need = Math.max(1, width + 1);
  if (n < need) return notEstimable(n, 'too-few-observations', [{ what: 'observations', have: n, need }]);
  const columns = Array.from({ length: width }, (_, j) =>
    observations.map(({ predictors }) => predictors[j] ?? 0),
  );
  if (columns.some((column) => column.every((value) => value === column[0]))) {
    return notEstimable(n, 'predictor-does-not-vary', [{ what: 'different-values', have: 1, need: 2 }]);
  }
  const inputs = columns.map(scale);
  return {
    n,
    events: observations.filter(({ outcome }) => outcome).length,
    rows: observations.map(({ predictors }) => [
      1,
      ...predictors.map((x, j) => (x - (inputs[j]?.centre ?? 0)) / (inputs[j]?.unit ?? 1)),
    ]),
    outcomes: observations.map(({ outcome }) => (outcome ? 1 : 0)),
    inputs,
  };
}

/** Likelihood, score and information at the coefficients. */
export function logisticState(
  { rows, outcomes }: LogisticDesign,
  coefficients: readonly number[],
): LogisticState {
  const logOdds = rows.map((row) => dot(row, coefficients));
  const chances = logOdds.map(inverseLogit);
  // log(1 + e^x) without overflow.
  const logLikelihood = logOdds.reduce(
    (total, x, i) => total + (outcomes[i] ?? 0) * x - (Math.max(x, 0) + Math.log1p(Math.exp(-Math.abs(x)))),
    0,
  );
  const size = coefficients.length;
  const information = Array.from({ length: size }, () => new Array<number>(size).fill(0));
  const score = new Array<number>(size).fill(0);
  for (const [i, row] of rows.entries()) {
    const p = chances[i] ?? 0;
    const residual = (outcomes[i] ?? 0) - p;
    const weight = p * (1 - p);
    for (const [j, value] of row.entries()) {
      score[j] = (score[j] ?? 0) + residual * value;
      const line = information[j];
      if (!line) continue;
      for (const [k, other] of row.entries()) line[k] = (line[k] ?? 0) + weight * value * other;
    }
  }
  return { chances, logLikelihood, score, information };
}

/** Turns coefficients and covariance of scaled inputs back into those of the inputs as given. */
export function unscaledFit(
  design: LogisticDesign,
  method: LogisticFit['method'],
  scaled: { readonly coefficients: readonly number[]; readonly covariance: Matrix },
  logLikelihood: number,
  objective: number,
): LogisticFit {
  const { inputs } = design;
  // b_j = scaled_j / unit_j; a = scaled_0 - sum of scaled_j centre_j / unit_j.
  const back = [
    [1, ...inputs.map(({ centre, unit }) => -centre / unit)],
    ...inputs.map((input, j) => [0, ...inputs.map((_, k) => (j === k ? 1 / input.unit : 0))]),
  ];
  const covariance = sandwich(back, scaled.covariance);
  return {
    status: 'estimated',
    method,
    n: design.n,
    events: design.events,
    coefficients: timesVector(back, scaled.coefficients),
    standardErrors: covariance.map((row, i) => Math.sqrt(row[i] ?? 0)),
    covariance,
    logLikelihood,
    objective,
  };
}

/**
 * How far an objective may seem to fall in a step that is taken all the same: near the top its differences drown in
 * rounding, and Newton's steps are exact there.
 */
export function slackOf(objective: number): number {
  return 1e-13 * (1 + Math.abs(objective));
}
