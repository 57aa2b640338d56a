import { type NotEstimable, notEstimable } from './estimate';
import { dot, inverse, solve } from './linear-algebra';
import { logisticDesign, logisticState, slackOf, standardScale, unscaledFit } from './logistic-design';
import type { LogisticFit, LogisticObservation, LogisticReason } from './logistic-model';

const MOST_STEPS = 100;
const MOST_HALVINGS = 30;
/** Steps that move no log odds by more than this have converged. */
const CONVERGED = 1e-9;
/** Odds of about e^25 to 1: with steps still going on, an estimate that runs away to infinity. */
const RUNAWAY_LOG_ODDS = 25;

/**
 * Logistic regression by maximum likelihood (Newton's method, which here is iteratively reweighted least squares).
 *
 * Separation is recognised by what it does: the log odds of the divided observations grow by about one a step for
 * ever, while every other fit converges quadratically. Then there is no finite estimate, and none is given.
 * Few observations bias the slopes away from zero; `firthLogistic` and `posteriorModeLogistic` do not suffer so.
 */
export function maximumLikelihoodLogistic(
  observations: readonly LogisticObservation[],
): LogisticFit | NotEstimable<LogisticReason> {
  const design = logisticDesign(observations, standardScale);
  if ('status' in design) return design;
  const { n, events } = design;
  if (events === 0 || events === n) {
    return notEstimable(n, 'one-outcome-only', [
      { what: 'happened', have: events, need: 1 },
      { what: 'did-not-happen', have: n - events, need: 1 },
    ]);
  }
  let coefficients = new Array<number>(design.inputs.length + 1).fill(0);
  let state = logisticState(design, coefficients);
  for (let step = 0; step < MOST_STEPS; step++) {
    const move = solve(state.information, state.score);
    const farthest = Math.max(...design.rows.map((row) => Math.abs(dot(row, coefficients))));
    if (!move) return notEstimable(n, step === 0 ? 'predictors-collinear' : 'separated');
    const change = Math.max(...design.rows.map((row) => Math.abs(dot(row, move))));
    if (change < CONVERGED) {
      const covariance = inverse(state.information);
      if (!covariance) return notEstimable(n, 'separated');
      const { logLikelihood } = state;
      return unscaledFit(
        design,
        'maximum-likelihood',
        { coefficients, covariance },
        logLikelihood,
        logLikelihood,
      );
    }
    if (farthest > RUNAWAY_LOG_ODDS && change > 0.1) return notEstimable(n, 'separated');
    let share = 1;
    for (let halving = 0; halving < MOST_HALVINGS; halving++, share /= 2) {
      const tried = coefficients.map((value, i) => value + share * (move[i] ?? 0));
      const next = logisticState(design, tried);
      if (
        next.logLikelihood >= state.logLikelihood - slackOf(state.logLikelihood) ||
        halving === MOST_HALVINGS - 1
      ) {
        coefficients = tried;
        state = next;
        break;
      }
    }
  }
  return notEstimable(n, 'not-converged');
}
