/** What would let everything stand: single changes, each tried by solving again. */
import type { Plan } from './plan';
import type { PlanningProblem } from './problem';
import { finish, inSlices, type SliceOptions, type SliceProgress, type Steps } from './slices';
import { type SolveOptions, strictSteps } from './solve';

/** One change that could be made. */
export interface PossibleChange {
  readonly id: string;
  /** What it costs the athlete, as the caller sees it; any number. */
  readonly cost: number;
  /** The problem with the change made. */
  readonly apply: (problem: PlanningProblem) => PlanningProblem;
}

/** A change that works, with the best plan it allows. */
export interface Remedy {
  readonly change: PossibleChange;
  readonly plan: Plan;
}

/** How to look for remedies. */
export interface RemedyOptions extends SolveOptions {
  /** How many to find at most; 3 when absent. */
  readonly limit?: number;
}

/**
 * The cheapest changes that let everything stand, the cheapest first; of equal cost, in the order given.
 * A change of which it is not known whether it works is left out.
 */
export function cheapestRemedies(
  problem: PlanningProblem,
  changes: readonly PossibleChange[],
  options: RemedyOptions = {},
): readonly Remedy[] {
  return finish(remedySteps(problem, changes, options));
}

/** The same in slices; `undefined` when it was stopped. */
export function cheapestRemediesInSlices(
  problem: PlanningProblem,
  changes: readonly PossibleChange[],
  options: RemedyOptions & SliceOptions = {},
): Generator<SliceProgress, readonly Remedy[] | undefined, void> {
  return inSlices(remedySteps(problem, changes, options), options);
}

/** The steps of `cheapestRemedies`. */
export function* remedySteps(
  problem: PlanningProblem,
  changes: readonly PossibleChange[],
  options: RemedyOptions = {},
): Steps<readonly Remedy[]> {
  const found: Remedy[] = [];
  for (const change of [...changes].sort((a, b) => a.cost - b.cost)) {
    if (found.length >= (options.limit ?? 3)) break;
    const answer = yield* strictSteps(change.apply(problem), options);
    if (answer.answer === 'yes') found.push({ change, plan: answer.plan });
  }
  return found;
}
