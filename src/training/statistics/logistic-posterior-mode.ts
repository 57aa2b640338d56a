import { type NotEstimable, notEstimable } from './estimate';
import { dot, inverse, solve } from './linear-algebra';
import { type InputScale, logisticDesign, logisticState, slackOf, unscaledFit } from './logistic-design';
import type { LogisticFit, LogisticObservation, LogisticReason } from './logistic-model';
import { mean, sampleStandardDeviation } from './moments';

/** A Cauchy distribution: what is believed of a coefficient before the data. */
export interface CauchyPrior {
  readonly location: number;
  readonly scale: number;
}

/** Priors of the coefficients of scaled inputs, and the scaling. */
export interface LogisticPrior {
  readonly intercept: CauchyPrior;
  readonly slopes: readonly CauchyPrior[];
  readonly inputs: readonly InputScale[];
}

const MOST_STEPS = 2000;
const MOST_HALVINGS = 40;
const CONVERGED = 1e-9;

/** Gelman's default for slopes of scaled inputs. */
export const DEFAULT_SLOPE_PRIOR: CauchyPrior = { location: 0, scale: 2.5 };
/** Gelman's default for the intercept of scaled inputs. */
export const DEFAULT_INTERCEPT_PRIOR: CauchyPrior = { location: 0, scale: 10 };

/**
 * Gelman's scaling: an input with two values is shifted to mean 0 and made to differ by 1; any other is shifted to
 * mean 0 and scaled to standard deviation 0.5.
 */
export function defaultInputScale(column: readonly number[]): InputScale {
  const centre = mean(column) ?? 0;
  const values = [...new Set(column)];
  if (values.length === 2) return { centre, unit: Math.max(...values) - Math.min(...values) };
  return { centre, unit: 2 * (sampleStandardDeviation(column) ?? 0) };
}

/** Gelman's default prior for observations: scaled inputs, Cauchy(0, 2.5) slopes, Cauchy(0, 10) intercept. */
export function defaultLogisticPrior(observations: readonly LogisticObservation[]): LogisticPrior {
  const width = observations[0]?.predictors.length ?? 0;
  const inputs = Array.from({ length: width }, (_, j) =>
    defaultInputScale(observations.map(({ predictors }) => predictors[j] ?? 0)),
  );
  return { intercept: DEFAULT_INTERCEPT_PRIOR, slopes: inputs.map(() => DEFAULT_SLOPE_PRIOR), inputs };
}

/**
 * Logistic regression with weak Cauchy priors: the mode of the posterior. Each Cauchy is a normal distribution whose
 * variance is estimated along with the coefficient, (scale2 + (coefficient - location)2) / 2, so that every step is a
 * penalised Newton step. Finite also under separation. Standard errors from the inverse of information plus prior
 * precision at the mode, as in the source's approximate EM algorithm.
 *
 * Source: Gelman, Jakulin, Pittau & Su (2008) Ann Appl Stat 2:1360-1383.
 */
export function posteriorModeLogistic(
  observations: readonly LogisticObservation[],
  prior: LogisticPrior = defaultLogisticPrior(observations),
): LogisticFit | NotEstimable<LogisticReason> {
  const design = logisticDesign(
    observations,
    (_, position) => prior.inputs[position] ?? { centre: 0, unit: 1 },
  );
  if ('status' in design) return design;
  const priors = [prior.intercept, ...prior.slopes];
  if (priors.length !== design.inputs.length + 1) throw new RangeError('Every predictor needs a prior');
  let coefficients = priors.map(({ location }) => location);
  let state = logisticState(design, coefficients);
  let objective = state.logLikelihood + logPrior(priors, coefficients);
  for (let step = 0; step < MOST_STEPS; step++) {
    const precisions = priors.map(
      ({ location, scale }, i) => 2 / (scale ** 2 + ((coefficients[i] ?? 0) - location) ** 2),
    );
    const curvature = state.information.map((row, i) =>
      row.map((value, j) => value + (i === j ? (precisions[i] ?? 0) : 0)),
    );
    const slope = state.score.map(
      (value, i) => value - (precisions[i] ?? 0) * ((coefficients[i] ?? 0) - (priors[i]?.location ?? 0)),
    );
    const move = solve(curvature, slope);
    if (!move) return notEstimable(design.n, 'predictors-collinear');
    const change = Math.max(...design.rows.map((row) => Math.abs(dot(row, move))));
    if (change < CONVERGED) {
      const covariance = inverse(curvature);
      if (!covariance) return notEstimable(design.n, 'predictors-collinear');
      return unscaledFit(
        design,
        'posterior-mode',
        { coefficients, covariance },
        state.logLikelihood,
        objective,
      );
    }
    let share = 1;
    for (let halving = 0; halving < MOST_HALVINGS; halving++, share /= 2) {
      const tried = coefficients.map((value, i) => value + share * (move[i] ?? 0));
      const next = logisticState(design, tried);
      const reached = next.logLikelihood + logPrior(priors, tried);
      if (reached >= objective - slackOf(objective) || halving === MOST_HALVINGS - 1) {
        coefficients = tried;
        state = next;
        objective = reached;
        break;
      }
    }
  }
  return notEstimable(design.n, 'not-converged');
}

/** The log density of the priors, up to a constant. */
function logPrior(priors: readonly CauchyPrior[], coefficients: readonly number[]): number {
  return priors.reduce(
    (total, { location, scale }, i) => total - Math.log1p((((coefficients[i] ?? 0) - location) / scale) ** 2),
    0,
  );
}
