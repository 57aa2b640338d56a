import { type Interval, type NotEstimable, notEstimable } from './estimate';
import { dot, type Matrix, timesVector } from './linear-algebra';
import { twoSidedZ } from './normal-quantile';

/** One observation: numbers that may explain an outcome, and whether it happened. */
export interface LogisticObservation {
  readonly predictors: readonly number[];
  readonly outcome: boolean;
}

/** A fitted model logit P(outcome) = coefficients[0] + coefficients[1] x1 + ... */
export interface LogisticFit {
  readonly status: 'estimated';
  readonly method: 'maximum-likelihood' | 'firth' | 'posterior-mode';
  readonly n: number;
  /** In how many observations the outcome happened. */
  readonly events: number;
  /** Intercept first, then one a predictor, per unit of the predictor as given. */
  readonly coefficients: readonly number[];
  readonly standardErrors: readonly number[];
  readonly covariance: Matrix;
  /** Log-likelihood of the data at the coefficients, without any penalty. */
  readonly logLikelihood: number;
  /** What was maximised: with Firth's penalty, or with the log prior (up to a constant). */
  readonly objective: number;
}

export type LogisticReason =
  | 'too-few-observations'
  /** The outcome always happened, or never did. */
  | 'one-outcome-only'
  | 'predictor-does-not-vary'
  /** Predictors that are combinations of each other. */
  | 'predictors-collinear'
  /** A line divides the outcomes without error, so a coefficient has no finite estimate. */
  | 'separated'
  | 'not-converged';

/** A chance with its interval. */
export interface Chance extends Interval {
  readonly n: number;
  readonly chance: number;
}

/** The value of a predictor at which the chance is as asked. */
export interface InverseEstimate {
  readonly status: 'estimated';
  readonly n: number;
  readonly value: number;
  readonly standardError: number;
  readonly interval: Interval;
}

/** The log odds of a chance inside 0..1. */
export function logit(chance: number): number {
  return Math.log(chance) - Math.log1p(-chance);
}

/** The chance that belongs to log odds. */
export function inverseLogit(logOdds: number): number {
  return 1 / (1 + Math.exp(-logOdds));
}

/**
 * The chance of the outcome at given predictors, with the Wald interval of its log odds.
 */
export function chanceAt(fit: LogisticFit, predictors: readonly number[], confidence = 0.95): Chance {
  const row = [1, ...predictors];
  const logOdds = dot(fit.coefficients, row);
  const reach = twoSidedZ(confidence) * Math.sqrt(dot(row, timesVector(fit.covariance, row)));
  return {
    n: fit.n,
    chance: inverseLogit(logOdds),
    lower: inverseLogit(logOdds - reach),
    upper: inverseLogit(logOdds + reach),
  };
}

/**
 * The value of one predictor at which the chance is `chance`, the others held at the values given in `predictors`
 * (whose own place is not read): x = (logit(chance) - a - sum of others) / b, with the delta method's standard error.
 */
export function predictorAtChance(
  fit: LogisticFit,
  chance: number,
  {
    position = 0,
    predictors = [],
  }: { readonly position?: number; readonly predictors?: readonly number[] } = {},
  confidence = 0.95,
): InverseEstimate | NotEstimable<'no-slope'> {
  const slope = fit.coefficients[position + 1] ?? 0;
  if (slope === 0) return notEstimable(fit.n, 'no-slope');
  const held = fit.coefficients.map((_, i) =>
    i === 0 ? 1 : i === position + 1 ? 0 : (predictors[i - 1] ?? 0),
  );
  const value = (logit(chance) - dot(fit.coefficients, held)) / slope;
  const gradient = held.map((h, i) => -(i === position + 1 ? value : h) / slope);
  const standardError = Math.sqrt(dot(gradient, timesVector(fit.covariance, gradient)));
  const reach = twoSidedZ(confidence) * standardError;
  return {
    status: 'estimated',
    n: fit.n,
    value,
    standardError,
    interval: { lower: value - reach, upper: value + reach },
  };
}
