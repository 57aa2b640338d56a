import { type NotEstimable, notEstimable } from './estimate';
import { dot, inverse, logDeterminant, type Matrix, timesVector } from './linear-algebra';
import {
  type LogisticDesign,
  type LogisticState,
  logisticDesign,
  logisticState,
  slackOf,
  standardScale,
  unscaledFit,
} from './logistic-design';
import type { LogisticFit, LogisticObservation, LogisticReason } from './logistic-model';

const MOST_STEPS = 500;
const MOST_HALVINGS = 40;
const CONVERGED = 1e-9;
/** A step moves no log odds further than this, so that the penalty's surface is not left. */
const LONGEST_MOVE = 5;

/**
 * Logistic regression with Firth's penalty, half the log determinant of the information: the score becomes
 * sum of [y - p + h(1/2 - p)] x with h the leverages. Finite also under separation, and nearly free of small-sample
 * bias. Standard errors from the inverse information X'WX.
 *
 * Sources: Firth D (1993) Biometrika 80:27-38; Heinze & Schemper (2002) Stat Med 21:2409-2419.
 */
export function firthLogistic(
  observations: readonly LogisticObservation[],
): LogisticFit | NotEstimable<LogisticReason> {
  const design = logisticDesign(observations, standardScale);
  if ('status' in design) return design;
  let coefficients = new Array<number>(design.inputs.length + 1).fill(0);
  let state = logisticState(design, coefficients);
  let objective = penalised(state);
  if (objective === undefined) return notEstimable(design.n, 'predictors-collinear');
  for (let step = 0; step < MOST_STEPS; step++) {
    const covariance = inverse(state.information);
    if (!covariance) break;
    const move = timesVector(covariance, firthScore(design, state, covariance));
    const change = Math.max(...design.rows.map((row) => Math.abs(dot(row, move))));
    if (change < CONVERGED) {
      // The determinant of the information in the inputs' own units differs by the squares of those units.
      const units = design.inputs.reduce((total, { unit }) => total + Math.log(unit), 0);
      return unscaledFit(
        design,
        'firth',
        { coefficients, covariance },
        state.logLikelihood,
        objective + units,
      );
    }
    let share = Math.min(1, LONGEST_MOVE / change);
    for (let halving = 0; halving < MOST_HALVINGS; halving++, share /= 2) {
      const tried = coefficients.map((value, i) => value + share * (move[i] ?? 0));
      const next = logisticState(design, tried);
      const reached = penalised(next);
      if (
        reached !== undefined &&
        (reached >= objective - slackOf(objective) || halving === MOST_HALVINGS - 1)
      ) {
        coefficients = tried;
        state = next;
        objective = reached;
        break;
      }
    }
  }
  return notEstimable(design.n, 'not-converged');
}

function penalised(state: LogisticState): number | undefined {
  const penalty = logDeterminant(state.information);
  return penalty === undefined ? undefined : state.logLikelihood + penalty / 2;
}

function firthScore(design: LogisticDesign, state: LogisticState, covariance: Matrix): number[] {
  const residuals = design.rows.map((row, i) => {
    const p = state.chances[i] ?? 0;
    const leverage = p * (1 - p) * dot(row, timesVector(covariance, row));
    return (design.outcomes[i] ?? 0) - p + leverage * (0.5 - p);
  });
  return state.score.map((_, j) =>
    design.rows.reduce((total, row, i) => total + (residuals[i] ?? 0) * (row[j] ?? 0), 0),
  );
}
