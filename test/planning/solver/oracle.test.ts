/**
 * The solver against an outside judge: HiGHS (`highs`, https://highs.dev), a general solver of
 * mixed-integer programmes, on random problems. Every plan is also checked by the independent checker.
 */
import assert from 'node:assert/strict';
import fc from 'fast-check';
import type { Highs } from 'highs';
import { checkPlan } from '../../../src/planning/solver/check-plan';
import { explainConflict } from '../../../src/planning/solver/explain';
import type { PlanningProblem } from '../../../src/planning/solver/problem';
import { onlyParts } from '../../../src/planning/solver/problem-changes';
import { solve, solveStrictly } from '../../../src/planning/solver/solve';
import { canAllStand, loadOracle, optimum } from './mip-oracle';
import { randomBlock, randomProblem } from './random-problem';
import { trainingBlock } from './training-block';

const SEED = 20260302;

describe('solver against HiGHS', function () {
  this.timeout(600_000);
  let highs: Highs;

  before(async () => {
    highs = await loadOracle();
  });

  /** Whether everything can stand, as HiGHS and the checker see it. */
  function judgedPossible(problem: PlanningProblem): boolean {
    return checkPlan(problem, []).violations.length === 0 && canAllStand(highs, problem);
  }

  /** The solver's plan is legal, and HiGHS, minimising some levels together, finds the same optimum. */
  function assertBest(problem: PlanningProblem, together: number): void {
    const plan = solve(problem);
    const check = checkPlan(problem, plan.placed);
    assert.deepEqual(check.violations, []);
    assert.deepEqual(plan.objective, check.objective);
    assert.equal(plan.status, 'proven best');
    const reached = plan.objective.map((figure) => figure.value);
    const judged = optimum(highs, problem, { formulation: 'cliques', together, reached });
    assert.deepEqual(reached, judged);
  }

  it('finds the same optimum at every level', () => {
    fc.assert(
      fc.property(randomProblem({ weeks: 2, needs: 4 }), (problem) => {
        const plan = solve(problem);
        if (plan.status === 'impossible') {
          assert.notDeepEqual(checkPlan(problem, []).violations, []);
          assert.notDeepEqual(plan.broken, []);
          return;
        }
        const check = checkPlan(problem, plan.placed);
        assert.deepEqual(check.violations, []);
        assert.deepEqual(plan.objective, check.objective);
        assert.equal(plan.status, 'proven best');
        assert.deepEqual(plan.bound, plan.objective);
        const values = plan.objective.map((figure) => figure.value);
        const judged = optimum(highs, problem, { formulation: 'pairs', together: 1, reached: values });
        assert.deepEqual(values, judged);
      }),
      { seed: SEED, numRuns: 500 },
    );
  });

  for (const [name, problems, runs] of [
    ['in larger problems of several weeks', randomProblem({ weeks: 4, needs: 9 }), 40],
    ['in blocks where much happens across the borders of weeks', randomBlock, 60],
  ] as const) {
    it(`finds the same optimum ${name}`, () => {
      fc.assert(
        fc.property(problems, (problem) => {
          assertBest({ ...problem, standingMayBreakRules: true }, 10_000);
        }),
        { seed: 20260305, numRuns: runs },
      );
    });
  }

  it('finds the same optimum in crowded training weeks and blocks', () => {
    const shapes = [
      { weeks: 1, kinds: 5, perWeek: 2 },
      { weeks: 3, kinds: 3, perWeek: 3 },
    ];
    for (const shape of shapes) {
      for (let seed = 1; seed <= 15; seed += 1) {
        assertBest(trainingBlock({ ...shape, grid: 120, air: false, seed }), 100_000);
      }
    }
  });

  it('says rightly whether everything can stand', () => {
    fc.assert(
      fc.property(randomProblem({ weeks: 2, needs: 3 }), (problem) => {
        const strict = solveStrictly(problem);
        assert.equal(strict.answer, judgedPossible(problem) ? 'yes' : 'no');
        if (strict.answer !== 'yes') return;
        assert.deepEqual(checkPlan(problem, strict.plan.placed).violations, []);
        const needed = strict.plan.leftOut.filter(
          ({ need }) => problem.needs.find(({ id }) => id === need)?.importance !== undefined,
        );
        assert.deepEqual(needed, []);
      }),
      { seed: SEED + 1, numRuns: 500 },
    );
  });

  it('names conflicts of which every part is needed', () => {
    fc.assert(
      fc.property(randomProblem({ weeks: 1, needs: 4 }), (problem) => {
        const conflict = explainConflict(problem);
        assert.equal(conflict === undefined, judgedPossible(problem));
        if (conflict === undefined) return;
        assert.equal(conflict.proven, true);
        const ids = conflict.parts.map((part) => part.id);
        assert.equal(judgedPossible(onlyParts(problem, new Set(ids))), false);
        for (const given of ids) {
          const others = new Set(ids.filter((id) => id !== given));
          assert.equal(judgedPossible(onlyParts(problem, others)), true, `without ${given}`);
        }
      }),
      { seed: SEED + 2, numRuns: 500 },
    );
  });
});
