import assert from 'node:assert/strict';
import fc from 'fast-check';
import { checkPlan } from '../../../src/planning/solver/check-plan';
import { compareObjectives, REARRANGING, valueAt } from '../../../src/planning/solver/order';
import type { Rule } from '../../../src/planning/solver/problem';
import { finish } from '../../../src/planning/solver/slices';
import { solve, solveInSlices, solveStrictly } from '../../../src/planning/solver/solve';
import { at, hours, linesOf, need, problemOf, standing } from './problem-of';
import { randomProblem } from './random-problem';

const apart: Rule = {
  type: 'gap',
  id: '48 h',
  earlier: ['flexibility'],
  later: ['flexibility'],
  minutes: hours(48),
};

describe('solve', () => {
  it('places interchangeable sessions as far apart as the rule asks', () => {
    const evenings = ['mon', 'tue', 'wed', 'thu'].map((day) => at(`${day} 18:00`));
    const plan = solve(problemOf({ needs: [need('flexibility', evenings, { count: 2 })], rules: [apart] }));
    assert.equal(plan.status, 'proven best');
    assert.deepEqual(linesOf(plan.placed), ['flexibility mon 18:00', 'flexibility thu 18:00']);
  });

  it('counts a gap from the end of one session to the start of the next', () => {
    const problem = (second: string) =>
      problemOf({
        needs: [need('flexibility', [at('mon 18:00'), at(second)], { count: 2 })],
        rules: [apart],
      });
    assert.equal(solve(problem('wed 19:00')).placed.length, 2);
    assert.equal(solve(problem('wed 18:59')).placed.length, 1);
  });

  it('keeps the gap to sessions before the horizon and across the border of weeks', () => {
    const needs = [
      need('flexibility', [at('mon 18:00'), at('sun 18:00')]),
      need('next', [at('mon+1 18:00'), at('tue+1 19:00')], { week: 1, labels: ['flexibility'] }),
    ];
    const past = standing('last sunday', 'sun-1 18:00', ['flexibility']);
    const plan = solve(problemOf({ weeks: 2, needs, standing: [past], rules: [apart] }));
    assert.deepEqual(linesOf(plan.placed), ['flexibility sun 18:00', 'next tue+1 19:00']);
  });

  it('leaves out the fewest sessions, and of those the least important', () => {
    const needs = [
      need('near goal', [at('mon 18:00')], { importance: 0 }),
      need('far goal', [at('mon 18:30')], { importance: 1 }),
    ];
    const plan = solve(problemOf({ needs }));
    assert.deepEqual(linesOf(plan.placed), ['near goal mon 18:00']);
    assert.deepEqual(plan.leftOut, [{ need: 'far goal', count: 1 }]);
    assert.equal(valueAt(plan.objective, 'leftOut'), 1);
  });

  it('would rather leave out one important session than two others', () => {
    const needs = [
      need('long', [at('mon 17:00', { minutes: 180 })], { importance: 0 }),
      need('short', [at('mon 17:00'), at('mon 19:00')], { importance: 1, count: 2 }),
    ];
    assert.deepEqual(solve(problemOf({ needs })).leftOut, [{ need: 'long', count: 1 }]);
  });

  it('keeps a required rest day, and gives up a wished one for a needed session', () => {
    const everyDay = ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'].map((day) => at(`${day} 18:00`));
    const problem = (required: boolean) =>
      problemOf({
        needs: [need('strength', everyDay, { count: 7 })],
        rules: [{ type: 'rest', id: 'rest day', of: ['strength'], days: 1, required }],
      });
    assert.equal(solve(problem(true)).placed.length, 6);
    assert.equal(solve(problem(false)).placed.length, 7);
    assert.equal(valueAt(solve(problem(false)).objective, 'shortfall'), 1);
  });

  it('places a session that nobody needs when a minimum asks for it', () => {
    const massage = need('recovery', [at('sun 10:00', { preference: 3 })]);
    const { importance: _, ...optional } = massage;
    const without = problemOf({ needs: [optional] });
    const minimum: Rule = { type: 'count', id: 'weekly recovery', of: ['recovery'], min: 1 };
    assert.deepEqual(solve(without).placed, []);
    assert.deepEqual(linesOf(solve({ ...without, rules: [minimum] }).placed), ['recovery sun 10:00']);
  });

  it('avoids two hard days in a row before it looks at habits', () => {
    const needs = [
      need('hard', [at('mon 18:00'), at('tue 18:00'), at('wed 18:00', { deviation: 9 })], { count: 2 }),
    ];
    const plan = solve(problemOf({ needs, rules: [{ type: 'row', id: 'row', of: ['hard'] }] }));
    assert.deepEqual(linesOf(plan.placed), ['hard mon 18:00', 'hard wed 18:00']);
  });

  it('spreads hard sessions up to the comfortable gap, in steps', () => {
    const days = ['mon', 'tue', 'wed', 'thu', 'fri'].map((day, index) =>
      at(`${day} 18:00`, { preference: index }),
    );
    const air: Rule = {
      type: 'air',
      id: 'air',
      earlier: ['hard'],
      later: ['hard'],
      comfortable: hours(71),
      step: hours(12),
    };
    const plan = solve(problemOf({ needs: [need('hard', days, { count: 2 })], rules: [air] }));
    assert.deepEqual(linesOf(plan.placed), ['hard mon 18:00', 'hard thu 18:00']);
  });

  it('does not place a hard session on a region in pain, or where hours are taken', () => {
    const needs = [
      need('back', [at('tue 18:00')], { labels: ['hard', 'region:back'] }),
      need('arms', [at('tue 19:00'), at('wed 19:00', { blockedBy: ['busy'] })], {
        labels: ['hard', 'region:arms'],
      }),
    ];
    const pain: Rule = { type: 'block', id: 'pain', of: ['hard', 'region:back'], from: 0, to: hours(7 * 24) };
    assert.deepEqual(linesOf(solve(problemOf({ needs, rules: [pain] })).placed), ['arms tue 19:00']);
  });

  it('keeps the cap of a day and the maximum of a week, standing sessions included', () => {
    const days = ['mon', 'tue', 'wed'].map((day) => at(`${day} 18:00`));
    const problem = problemOf({
      needs: [need('skill', days, { count: 3, labels: ['skill', 'training'] })],
      standing: [standing('coach', 'mon 10:00', ['skill', 'training'])],
      rules: [
        { type: 'cap', id: 'cap', of: ['training'], minutes: 90 },
        { type: 'count', id: 'twice', of: ['skill'], max: 2 },
      ],
    });
    assert.deepEqual(linesOf(solve(problem).placed), ['skill tue 18:00']);
  });

  it('says what standing sessions break, or takes them as they are', () => {
    const problem = problemOf({
      needs: [need('flexibility', [at('thu 18:00'), at('sat 20:00')])],
      standing: [
        standing('coach', 'mon 18:00', ['flexibility']),
        standing('partner', 'tue 18:00', ['flexibility']),
      ],
      rules: [apart],
    });
    const refused = solve(problem);
    assert.equal(refused.status, 'impossible');
    assert.deepEqual(refused.broken, [{ rule: '48 h', sessions: ['coach', 'partner'] }]);
    const taken = solve({ ...problem, standingMayBreakRules: true });
    assert.equal(taken.status, 'proven best');
    assert.deepEqual(linesOf(taken.placed), ['flexibility sat 20:00']);
  });

  it('moves as few sessions as it can when it rearranges a week', () => {
    const needs = [
      need('flexibility', [
        at('mon 18:00'),
        at('tue 18:00', { standsHere: true, deviation: 5 }),
        at('fri 18:00'),
      ]),
      need('strength', [at('wed 18:00', { standsHere: true, preference: 7 }), at('thu 18:00')]),
    ];
    const plan = solve(problemOf({ needs, order: REARRANGING }));
    assert.deepEqual(linesOf(plan.placed), ['flexibility tue 18:00', 'strength wed 18:00']);
    assert.equal(valueAt(plan.objective, 'moved'), 0);
    const busy = needs.map((each) => ({
      ...each,
      candidates: each.candidates.map((place) =>
        place.start === at('tue 18:00').start ? { ...place, blockedBy: ['busy'] } : place,
      ),
    }));
    const moved = solve(problemOf({ needs: busy, order: REARRANGING }));
    assert.deepEqual(linesOf(moved.placed), ['flexibility mon 18:00', 'strength wed 18:00']);
    assert.equal(valueAt(moved.objective, 'moved'), 1);
  });

  it('answers strictly only when everything can stand', () => {
    const problem = problemOf({
      needs: [need('flexibility', [at('mon 18:00'), at('tue 18:00')], { count: 2 })],
      rules: [apart],
    });
    assert.deepEqual(solveStrictly(problem), { answer: 'no' });
    const strict = solveStrictly({ ...problem, rules: [] });
    assert.equal(strict.answer, 'yes');
  });
});

describe('solve in slices', function () {
  this.timeout(600_000);

  it('gives the same plan, slice by slice', () => {
    fc.assert(
      fc.property(randomProblem({ weeks: 3, needs: 5 }), (problem) => {
        const plan = solve(problem);
        assert.deepEqual(finish(solveInSlices(problem, { nodesPerSlice: 1 })), plan);
        assert.deepEqual(solve(structuredClone(problem)), plan);
      }),
      { seed: 20260304, numRuns: 60 },
    );
  });

  it('pauses after each slice, and stops when it is told to', () => {
    const evenings = ['mon', 'tue', 'wed', 'thu'].map((day) => at(`${day} 18:00`));
    const problem = problemOf({ needs: [need('skill', evenings, { count: 3 })] });
    const steps = solveInSlices(problem, { nodesPerSlice: 5 });
    const first = steps.next();
    assert.equal(first.done, false);
    let asked = 0;
    const stopped = finish(
      solveInSlices(problem, {
        nodesPerSlice: 1,
        shouldStop: () => {
          asked += 1;
          return asked === 2;
        },
      }),
    );
    assert.equal(stopped, undefined);
    assert.equal(asked, 2);
  });

  it('gives a legal plan and a true bound when it is cut short', () => {
    let cutShort = 0;
    fc.assert(
      fc.property(randomProblem({ weeks: 3, needs: 8 }), fc.nat(150), (problem, nodeLimit) => {
        const best = solve({ ...problem, standingMayBreakRules: true });
        const plan = solve({ ...problem, standingMayBreakRules: true }, { nodeLimit });
        const check = checkPlan({ ...problem, standingMayBreakRules: true }, plan.placed);
        assert.deepEqual(check.violations, []);
        assert.deepEqual(check.objective, plan.objective);
        assert.ok(compareObjectives(plan.bound, best.objective) <= 0);
        assert.ok(compareObjectives(best.objective, plan.objective) <= 0);
        if (plan.status === 'proven best') assert.deepEqual(plan.objective, best.objective);
        else cutShort += 1;
      }),
      { seed: 20260305, numRuns: 150 },
    );
    assert.ok(cutShort > 20, `only ${cutShort} searches were cut short`);
  });
});
