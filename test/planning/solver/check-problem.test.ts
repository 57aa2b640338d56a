import assert from 'node:assert/strict';
import { checkProblem, InvalidPlanningProblemError } from '../../../src/planning/solver/check-problem';
import { CostTooLargeError } from '../../../src/planning/solver/cost';
import type { PlanningProblem } from '../../../src/planning/solver/problem';
import { solve } from '../../../src/planning/solver/solve';
import { at, need, problemOf, standing } from './problem-of';

describe('check a problem', () => {
  const wrong: readonly (readonly [string, Partial<PlanningProblem>, RegExp])[] = [
    ['no week', { weeks: 0 }, /at least one week/],
    ['a level twice', { order: ['leftOut', 'leftOut'] }, /twice/],
    ['an id twice', { needs: [need('a', []), need('a', [])] }, /share an id/],
    ['hours with the id of a need', { needs: [need('a', [at('mon 8:00', { blockedBy: ['a'] })])] }, /both/],
    ['half a session', { needs: [need('a', [], { count: 0.5 })] }, /count/],
    ['a week outside', { needs: [need('a', [], { week: 1 })] }, /outside the horizon/],
    ['a candidate of another week', { needs: [need('a', [at('mon+1 8:00')])], weeks: 2 }, /another week/],
    ['a session that ends first', { needs: [need('a', [at('mon 8:00', { minutes: 0 })])] }, /ends before/],
    ['a negative cost', { needs: [need('a', [at('mon 8:00', { deviation: -1 })])] }, /deviation/],
    [
      'a standing session after the end',
      { standing: [standing('a', 'mon+1 8:00', [])] },
      /after the horizon/,
    ],
    ['eight rest days', { rules: [{ type: 'rest', id: 'r', of: [], days: 8, required: true }] }, /rest days/],
    [
      'a step of nothing',
      { rules: [{ type: 'air', id: 'r', earlier: [], later: [], comfortable: 60, step: 0 }] },
      /step/,
    ],
    [
      'days that contradict the minutes',
      { standing: [standing('a', 'tue 8:00', []), { ...standing('b', 'mon 8:00', []), day: 2 }] },
      /before an earlier/,
    ],
  ];
  for (const [name, parts, message] of wrong) {
    it(`refuses ${name}`, () => {
      assert.throws(
        () => checkProblem(problemOf(parts)),
        (error) => error instanceof InvalidPlanningProblemError && message.test(error.message),
      );
    });
  }

  it('refuses costs that could not be added exactly', () => {
    const dear = need('a', [at('mon 8:00', { preference: Number.MAX_SAFE_INTEGER })]);
    assert.throws(() => solve(problemOf({ needs: [dear] })), CostTooLargeError);
  });
});
