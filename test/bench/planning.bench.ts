/**
 * The solver against HiGHS on invented training weeks and blocks, in one process: the same problems, the
 * same strict order of levels, and the same answers, which is checked. HiGHS gets its best formulation of
 * those tried (one variable for each need and start, gaps as cliques, neighbouring levels minimised
 * together where the weights stay exact) and a time limit for each level.
 */
import assert from 'node:assert/strict';
import { checkPlan } from '../../src/planning/solver/check-plan';
import type { PlanningProblem } from '../../src/planning/solver/problem';
import { solve } from '../../src/planning/solver/solve';
import { loadOracle, optimum } from '../planning/solver/mip-oracle';
import { type BlockShape, trainingBlock } from '../planning/solver/training-block';
import { type Measurement, summarize } from './measure';

const SECONDS = 20;
const RUNS = 5;
const highs = await loadOracle();

interface Result {
  readonly sessions: number;
  readonly places: number;
  readonly ours: number;
  readonly theirs: number | undefined;
}

function timed<T>(work: () => T): { readonly value: T; readonly milliseconds: number } {
  const start = performance.now();
  const value = work();
  return { value, milliseconds: performance.now() - start };
}

/** Solves one problem with both; the time of the solver is the median of some runs. */
function race(problem: PlanningProblem, withHighs: boolean): Result {
  const runs = Array.from({ length: RUNS }, () => timed(() => solve(problem)));
  const plan = runs[0]?.value;
  assert.ok(plan);
  assert.equal(plan.status, 'proven best');
  const check = checkPlan(problem, plan.placed);
  assert.deepEqual(check.violations, []);
  assert.deepEqual(check.objective, plan.objective);
  let theirs: number | undefined;
  if (withHighs) {
    const { value, milliseconds } = timed(() =>
      optimum(highs, problem, { formulation: 'cliques', together: 100_000, secondsPerLevel: SECONDS }),
    );
    if (value !== 'out of time') {
      theirs = milliseconds;
      assert.deepEqual(
        value,
        plan.objective.map((figure) => figure.value),
      );
    }
  }
  return {
    sessions: problem.needs.reduce((sum, need) => sum + need.count, 0),
    places: problem.needs.reduce((sum, need) => sum + need.candidates.length, 0),
    ours: summarize(runs.map((run) => run.milliseconds)).median,
    theirs,
  };
}

function spread({ median, low, high }: Measurement): string {
  const digits = (value: number) => (value >= 100 ? value.toFixed(0) : value.toPrecision(3));
  return `${digits(median)} (${digits(low)} to ${digits(high)})`;
}

function report(name: string, results: readonly Result[]): void {
  const ours = results.map((result) => result.ours);
  const finished = results.flatMap(({ ours, theirs }) => (theirs === undefined ? [] : [{ ours, theirs }]));
  console.log(`\n${name}: ${results.length} instances, ${results[0]?.sessions} sessions each`);
  console.log(`  solver      ${spread(summarize(ours))} ms, at most ${Math.max(...ours).toFixed(1)} ms`);
  if (finished.length > 0) {
    console.log(`  HiGHS       ${spread(summarize(finished.map(({ theirs }) => theirs)))} ms`);
    const ratios = finished.map(({ ours, theirs }) => theirs / ours);
    console.log(
      `  HiGHS/solver ${spread(summarize(ratios))} times, at least ${Math.min(...ratios).toFixed(1)} times`,
    );
  }
  const late = results.length - finished.length;
  if (late > 0) console.log(`  HiGHS did not finish a level within ${SECONDS} s in ${late} of them`);
}

function blocks(count: number, shape: Omit<BlockShape, 'seed'>): PlanningProblem[] {
  return Array.from({ length: count }, (_, index) => trainingBlock({ ...shape, seed: index + 1 }));
}

const week = { weeks: 1, kinds: 3, perWeek: 2, grid: 60, air: false };
const block = { ...week, weeks: 12 };

// The first runs compile.
for (const problem of blocks(3, { ...week, weeks: 2, air: true })) race(problem, true);

const against = (name: string, count: number, shape: Omit<BlockShape, 'seed'>) =>
  report(
    name,
    blocks(count, shape).map((problem) => race(problem, true)),
  );
against('One week, gaps, caps, rest, habits', 20, week);
against('One week, air and hard days in a row too', 20, { ...week, air: true });
against('Twelve weeks, gaps, caps, rest, habits', 20, block);
against('Twelve weeks, air and hard days in a row too', 3, { ...block, air: true });

console.log('\nGrowth of the solver alone, everything counted: median of 20 instances, and the slowest');
for (const shape of [
  { ...week, air: true },
  { ...week, air: true, grid: 30 },
  { ...week, air: true, grid: 15 },
  { ...week, air: true, grid: 30, perWeek: 1 },
  { ...week, air: true, grid: 30, perWeek: 3 },
  { ...week, air: true, grid: 30, kinds: 4 },
  { ...week, air: true, grid: 30, kinds: 5 },
  { ...block, air: true },
  { ...block, air: true, grid: 30 },
  { ...block, air: true, grid: 15 },
  { ...block, air: true, grid: 30, perWeek: 1 },
]) {
  const results = blocks(20, shape).map((problem) => race(problem, false));
  const ours = results.map((result) => result.ours);
  const { sessions, places } = results[0] ?? { sessions: 0, places: 0 };
  console.log(
    `  ${String(shape.weeks).padStart(2)} weeks, ${String(sessions).padStart(3)} sessions, a start every ` +
      `${shape.grid} min (some ${places} places): ${summarize(ours).median.toFixed(1)} ms, ` +
      `at most ${Math.max(...ours).toFixed(1)} ms`,
  );
}
