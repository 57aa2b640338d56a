/**
 * Why not everything can stand: a smallest set of parts that cannot stand together.
 *
 * Smallest means that giving up any one of them would let the others stand; there may be other such sets.
 * The method is QuickXplain (Junker, "QUICKXPLAIN: Preferred Explanations and Relaxations for
 * Over-Constrained Problems", AAAI 2004), asked with the solver itself.
 */

import type { PlanningProblem } from './problem';
import { onlyParts, type ProblemPart, partsOf } from './problem-changes';
import { finish, inSlices, type SliceOptions, type SliceProgress, type Steps } from './slices';
import { canAllStandSteps, type SolveOptions } from './solve';

/** Parts that cannot stand together. */
export interface Conflict {
  readonly parts: readonly ProblemPart[];
  /**
   * Whether it is proven that the set is smallest. It is not when a search was cut short: then what it
   * left open was taken to fit, and the set may be larger than it has to be.
   */
  readonly proven: boolean;
}

/** How to explain. */
export interface ExplainOptions extends SolveOptions {
  /** Ids of parts that cannot be given up: they are taken as given and never named. */
  readonly given?: ReadonlySet<string>;
}

/**
 * A smallest set of parts that cannot stand together; `undefined` when everything can stand, or when it is
 * not known whether it can. The set is empty when already what is given cannot stand.
 */
export function explainConflict(
  problem: PlanningProblem,
  options: ExplainOptions = {},
): Conflict | undefined {
  return finish(explainSteps(problem, options));
}

/** The same in slices; `undefined` also when it was stopped. */
export function explainConflictInSlices(
  problem: PlanningProblem,
  options: ExplainOptions & SliceOptions = {},
): Generator<SliceProgress, Conflict | undefined, void> {
  return inSlices(explainSteps(problem, options), options);
}

/** The steps of `explainConflict`. */
export function* explainSteps(
  problem: PlanningProblem,
  options: ExplainOptions = {},
): Steps<Conflict | undefined> {
  const given = options.given ?? new Set<string>();
  const parts = partsOf(problem);
  const background = parts.filter((part) => given.has(part.id));
  const open = parts.filter((part) => !given.has(part.id));
  let proven = true;
  function* standTogether(chosen: readonly ProblemPart[]): Steps<boolean> {
    const asked = onlyParts(problem, new Set(chosen.map((part) => part.id)));
    const answer = yield* canAllStandSteps(asked, options);
    if (answer === undefined) proven = false;
    return answer ?? true;
  }
  /** Which of `candidates` are needed for a conflict with `taken`; `added` has just joined `taken`. */
  function* smallest(
    taken: readonly ProblemPart[],
    added: readonly ProblemPart[],
    candidates: readonly ProblemPart[],
  ): Steps<readonly ProblemPart[]> {
    if (added.length > 0 && !(yield* standTogether(taken))) return [];
    if (candidates.length <= 1) return candidates;
    const half = candidates.length >> 1;
    const first = candidates.slice(0, half);
    const second = candidates.slice(half);
    const fromSecond = yield* smallest([...taken, ...first], first, second);
    const fromFirst = yield* smallest([...taken, ...fromSecond], fromSecond, first);
    return [...fromFirst, ...fromSecond];
  }
  if (yield* standTogether(parts)) return undefined;
  const found = yield* smallest(background, background, open);
  return { parts: found, proven };
}
