/**
 * The solver: from a problem to the best plan.
 *
 * `solve` answers at once, `solveInSlices` lets the caller breathe in between. Both leave out sessions
 * that do not fit. `solveStrictly` asks instead whether everything can stand: every needed session, every
 * minimum and every rest day. The answer is always the same for the same problem.
 */
import { type BlockResult, BlockSearch } from './block-search';
import { checkProblem } from './check-problem';
import { type Cost, costWith, endlessCost, unpackCost } from './cost';
import type { Level, Objective } from './order';
import type { LeftOut, PlacedSession, Plan } from './plan';
import { prepare } from './prepare';
import type { PlanningProblem } from './problem';
import { finish, inSlices, type SliceOptions, type SliceProgress, type Steps } from './slices';
import { brokenByStanding } from './standing';
import type { Place, PreparedProblem } from './tables';

/** How long to search. */
export interface SolveOptions {
  /** Nodes after which the search is cut short; 5 million when absent, some seconds. */
  readonly nodeLimit?: number;
}

/** Whether everything can stand. */
export type StrictAnswer =
  /** It can; the plan is the best of those in which it does. */
  | { readonly answer: 'yes'; readonly plan: Plan }
  | { readonly answer: 'no' }
  /** The search was cut short before it knew. */
  | { readonly answer: 'not known' };

const NODE_LIMIT = 5_000_000;

/**
 * The best plan.
 * @throws InvalidPlanningProblemError, CostTooLargeError
 */
export function solve(problem: PlanningProblem, options: SolveOptions = {}): Plan {
  return finish(solveSteps(problem, options));
}

/**
 * The best plan, in slices; `undefined` when it was stopped.
 * @throws InvalidPlanningProblemError, CostTooLargeError
 */
export function solveInSlices(
  problem: PlanningProblem,
  options: SolveOptions & SliceOptions = {},
): Generator<SliceProgress, Plan | undefined, void> {
  return inSlices(solveSteps(problem, options), options);
}

/** Whether everything can stand, and the best plan in which it does. */
export function solveStrictly(problem: PlanningProblem, options: SolveOptions = {}): StrictAnswer {
  return finish(strictSteps(problem, options));
}

/** The steps of `solve`. */
export function* solveSteps(problem: PlanningProblem, options: SolveOptions = {}): Steps<Plan> {
  checkProblem(problem);
  const broken = problem.standingMayBreakRules ? [] : brokenByStanding(problem);
  if (broken.length > 0) {
    const leftOut = leftOutOf(problem, []);
    return { status: 'impossible', placed: [], leftOut, objective: [], bound: [], broken, nodes: 0 };
  }
  const prepared = prepare(problem);
  const search = new BlockSearch(prepared, endlessCost(prepared.layout), options.nodeLimit ?? NODE_LIMIT);
  const result = yield* search.run();
  // Leaving everything out is always possible, so there is a plan.
  if (result.found !== 'plan') throw new Error('The search has lost every plan.');
  return planOf(prepared, result, search.nodes);
}

/** The steps of `solveStrictly`. */
export function* strictSteps(problem: PlanningProblem, options: SolveOptions = {}): Steps<StrictAnswer> {
  checkProblem(problem);
  if (!problem.standingMayBreakRules && brokenByStanding(problem).length > 0) return { answer: 'no' };
  const first: readonly Level[] = ['leftOut', 'shortfall'];
  const order = [...first, ...problem.order.filter((level) => !first.includes(level))];
  const prepared = prepare({ ...problem, order });
  const ceiling = costWith(prepared.layout, [0, 1]);
  const search = new BlockSearch(prepared, ceiling, options.nodeLimit ?? NODE_LIMIT);
  const result = yield* search.run();
  if (result.found === 'none') return { answer: 'no' };
  if (result.found === 'nothing yet') return { answer: 'not known' };
  return { answer: 'yes', plan: planOf(prepared, result, search.nodes) };
}

/** Whether everything can stand, without looking for the best way; `undefined` when it is not known. */
export function* canAllStandSteps(
  problem: PlanningProblem,
  options: SolveOptions = {},
): Steps<boolean | undefined> {
  const { answer } = yield* strictSteps({ ...problem, order: [] }, options);
  return answer === 'not known' ? undefined : answer === 'yes';
}

function planOf(
  prepared: PreparedProblem,
  result: Extract<BlockResult, { found: 'plan' }>,
  nodes: number,
): Plan {
  const placed = result.places.map((id): PlacedSession => {
    const place = prepared.places[id] as Place;
    const { need, candidate, start, end, day } = place;
    return { need: need.need.id, candidate, start, end, day };
  });
  return {
    status: result.complete ? 'proven best' : 'best found',
    placed,
    leftOut: leftOutOf(prepared.problem, placed),
    objective: objectiveOf(prepared, result.cost),
    bound: objectiveOf(prepared, result.bound),
    broken: [],
    nodes,
  };
}

function leftOutOf(problem: PlanningProblem, placed: readonly PlacedSession[]): LeftOut[] {
  return problem.needs.flatMap((need) => {
    const count = need.count - placed.filter((session) => session.need === need.id).length;
    return count > 0 ? [{ need: need.id, count }] : [];
  });
}

/** The search counts every session that is not where one stood; `moved` only the places given up. */
function objectiveOf(prepared: PreparedProblem, cost: Cost): Objective {
  const neverThere = prepared.problem.needs.reduce((sum, need) => {
    const stand = need.candidates.filter((candidate) => candidate.standsHere === true).length;
    return sum + need.count - Math.min(need.count, stand);
  }, 0);
  return unpackCost(prepared.layout, cost).map((figure) =>
    figure.level === 'moved' ? { ...figure, value: Math.max(0, figure.value - neverThere) } : figure,
  );
}
