import assert from 'node:assert/strict';
import { checkPlan } from '../../../src/planning/solver/check-plan';
import { keepingAfter } from '../../../src/planning/solver/order';
import type { PlacedSession } from '../../../src/planning/solver/plan';
import type { Need, PlanningProblem, Rule } from '../../../src/planning/solver/problem';
import { at, hours, need, problemOf, standing } from './problem-of';

/** The sessions of a plan: `id/candidate`. */
function place(problem: PlanningProblem, ...wanted: readonly string[]): PlacedSession[] {
  return wanted.map((text) => {
    const [id = '', index = '0'] = text.split('/');
    const candidate = problem.needs.find((each) => each.id === id)?.candidates[Number(index)];
    assert.ok(candidate);
    return {
      need: id,
      candidate: Number(index),
      start: candidate.start,
      end: candidate.end,
      day: candidate.day,
    };
  });
}

const needs: readonly Need[] = [
  need('hard', [at('mon 18:00'), at('tue 18:00'), at('thu 18:00', { blockedBy: ['trip'] })], {
    count: 2,
    labels: ['hard', 'training'],
  }),
  need('easy', [at('mon 18:30'), at('mon 20:00'), at('wed 18:00')], { importance: 1, labels: ['training'] }),
];

/** The rules that a plan breaks. */
function brokenBy(rules: readonly Rule[], ...wanted: readonly string[]): string[] {
  const problem = problemOf({ needs, rules });
  return checkPlan(problem, place(problem, ...wanted)).violations.map((violation) => violation.rule);
}

describe('check a plan', () => {
  it('finds each rule that is broken', () => {
    const of = ['training'];
    assert.deepEqual(brokenBy([], 'hard/0', 'easy/0'), ['one body at one time']);
    assert.deepEqual(brokenBy([], 'hard/2'), ['trip']);
    assert.deepEqual(brokenBy([], 'easy/1', 'easy/2'), ['more than wanted']);
    const gap: Rule = { type: 'gap', id: 'gap', earlier: ['hard'], later: ['hard'], minutes: hours(24) };
    assert.deepEqual(brokenBy([gap], 'hard/0', 'hard/1'), ['gap']);
    assert.deepEqual(brokenBy([{ ...gap, minutes: hours(23) }], 'hard/0', 'hard/1'), []);
    assert.deepEqual(brokenBy([{ type: 'cap', id: 'cap', of, minutes: 90 }], 'hard/0', 'easy/1'), ['cap']);
    assert.deepEqual(brokenBy([{ type: 'count', id: 'max', of, max: 1 }], 'hard/0', 'easy/2'), ['max']);
    const rest: Rule = { type: 'rest', id: 'rest', of, days: 5, required: true };
    assert.deepEqual(brokenBy([rest], 'hard/0', 'hard/1', 'easy/2'), ['rest']);
    assert.deepEqual(brokenBy([rest], 'hard/0', 'hard/1', 'easy/1'), []);
    const block: Rule = { type: 'block', id: 'pain', of: ['hard'], from: 0, to: hours(18) + 1 };
    assert.deepEqual(brokenBy([block], 'hard/0', 'easy/1'), ['pain']);
  });

  it('refuses a session at a place that the need does not have', () => {
    const problem = problemOf({ needs });
    const [session] = place(problem, 'hard/0');
    assert.ok(session);
    const moved = checkPlan(problem, [{ ...session, start: session.start + 15 }]);
    assert.deepEqual(
      moved.violations.map((violation) => violation.rule),
      ['unknown place'],
    );
    assert.equal(checkPlan(problem, [{ ...session, need: 'nobody' }]).violations.length, 1);
  });

  it('reports what standing sessions break, unless they are taken as they are', () => {
    const gap: Rule = { type: 'gap', id: 'gap', earlier: [], later: [], minutes: hours(24) };
    const sessions = [
      standing('a', 'mon 8:00', []),
      standing('b', 'mon 12:00', []),
      standing('long ago', 'fri-1 8:00', []),
      standing('soon after', 'fri-1 12:00', []),
    ];
    const problem = problemOf({ standing: sessions, rules: [gap] });
    assert.deepEqual(checkPlan(problem, []).violations, [{ rule: 'gap', sessions: ['a', 'b'] }]);
    assert.deepEqual(checkPlan({ ...problem, standingMayBreakRules: true }, []).violations, []);
  });

  it('works out every figure of the objective', () => {
    const problem = problemOf({
      needs: [
        need('hard', [at('mon 18:00', { deviation: 2 }), at('tue 18:00', { preference: 3 })], {
          count: 2,
          labels: ['hard'],
        }),
        need('easy', [at('wed 18:00', { standsHere: true })], { importance: 4 }),
      ],
      standing: [standing('yesterday', 'sun-1 18:00', ['hard'])],
      rules: [
        { type: 'row', id: 'row', of: ['hard'] },
        // 23 h from session to session: 47 - 23 h are missing, two steps of 12 h each time.
        {
          type: 'air',
          id: 'air',
          earlier: ['hard'],
          later: ['hard'],
          comfortable: hours(47),
          step: hours(12),
        },
        { type: 'count', id: 'recovery', of: ['recovery'], min: 2 },
        { type: 'rest', id: 'rest', of: ['hard'], days: 6, required: false },
      ],
      order: keepingAfter('air'),
    });
    const { violations, objective } = checkPlan(problem, place(problem, 'hard/0', 'hard/1'));
    assert.deepEqual(violations, []);
    assert.deepEqual(objective, [
      { level: 'leftOut', value: 1 },
      { level: 'leftOutByImportance', importance: 0, value: 0 },
      { level: 'leftOutByImportance', importance: 4, value: 1 },
      { level: 'shortfall', value: 3 },
      { level: 'row', value: 2 },
      { level: 'air', value: 4 },
      { level: 'moved', value: 1 },
      { level: 'deviation', value: 2 },
      { level: 'preference', value: 3 },
    ]);
  });
});
