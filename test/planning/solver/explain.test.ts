import assert from 'node:assert/strict';
import { explainConflict, explainConflictInSlices } from '../../../src/planning/solver/explain';
import type { Candidate, Rule } from '../../../src/planning/solver/problem';
import { withFewerSessions, withMinutes, withoutParts } from '../../../src/planning/solver/problem-changes';
import { cheapestRemedies } from '../../../src/planning/solver/remedies';
import { finish } from '../../../src/planning/solver/slices';
import { at, hours, linesOf, need, problemOf, standing } from './problem-of';

/** Monday afternoon, every evening until Saturday, and Sunday's, which is not free. */
const places: readonly Candidate[] = [
  at('mon 17:00'),
  ...['mon', 'tue', 'wed', 'thu', 'fri', 'sat'].map((day) => at(`${day} 19:30`)),
  at('sun 20:00', { blockedBy: ['sunday is not free'] }),
];

const rules: readonly Rule[] = [
  { type: 'gap', id: '72 h', earlier: ['back'], later: ['back'], minutes: hours(72) },
  { type: 'gap', id: '24 h', earlier: ['strength'], later: ['strength'], minutes: hours(24) },
  { type: 'cap', id: 'cap', of: [], minutes: 180 },
];

/** Two back sessions beside the coach's Thursday, and two of strength that are in nobody's way. */
const tooMuch = problemOf({
  needs: [
    need('back opening', places, { count: 2, labels: ['back'] }),
    need('strength', places, { count: 2, importance: 1, labels: ['strength'] }),
  ],
  standing: [standing('coach', 'thu 18:30', ['back'])],
  rules,
});

describe('explain a conflict', () => {
  it('names the need, the rule, the booking and the hours that cannot stand together, and nothing else', () => {
    const conflict = explainConflict(tooMuch);
    assert.deepEqual(conflict, {
      parts: [
        { kind: 'need', id: 'back opening' },
        { kind: 'rule', id: '72 h' },
        { kind: 'standing', id: 'coach' },
        { kind: 'hours', id: 'sunday is not free' },
      ],
      proven: true,
    });
  });

  it('says nothing when everything can stand', () => {
    assert.equal(explainConflict(withoutParts(tooMuch, 'coach')), undefined);
  });

  it('does not name what is given', () => {
    const conflict = explainConflict(tooMuch, { given: new Set(['coach', '72 h']) });
    assert.deepEqual(
      conflict?.parts.map((part) => part.id),
      ['back opening', 'sunday is not free'],
    );
  });

  it('names nothing when already what is given cannot stand', () => {
    const given = new Set(['back opening', '72 h', 'coach', 'sunday is not free']);
    assert.deepEqual(explainConflict(tooMuch, { given })?.parts, []);
  });

  it('counts a booked session towards a minimum also while it asks whether the booking is in the way', () => {
    const minimum: Rule = { type: 'count', id: 'recovery', of: ['recovery'], min: 1 };
    const problem = problemOf({
      needs: [need('skill', [at('sun 10:00')])],
      standing: [standing('massage', 'sun 10:30', ['recovery'])],
      rules: [minimum],
    });
    assert.deepEqual(
      explainConflict(problem)?.parts.map((part) => part.id),
      ['skill', 'massage'],
    );
  });

  it('works in slices and stops when it is told to', () => {
    const sliced = finish(explainConflictInSlices(tooMuch, { nodesPerSlice: 1 }));
    assert.deepEqual(sliced, explainConflict(tooMuch));
    const stopped = explainConflictInSlices(tooMuch, { nodesPerSlice: 1, shouldStop: () => true });
    assert.equal(finish(stopped), undefined);
  });
});

describe('cheapest remedies', () => {
  it('gives the changes that really let everything stand, the cheapest first', () => {
    const remedies = cheapestRemedies(tooMuch, [
      { id: 'one session fewer', cost: 5, apply: (problem) => withFewerSessions(problem, 'back opening') },
      { id: 'free sunday evening', cost: 2, apply: (problem) => withoutParts(problem, 'sunday is not free') },
      { id: 'more training a day', cost: 1, apply: (problem) => withMinutes(problem, 'cap', 300) },
      { id: '70 h', cost: 3, apply: (problem) => withMinutes(problem, '72 h', hours(70)) },
      { id: '47 h', cost: 4, apply: (problem) => withMinutes(problem, '72 h', hours(47)) },
    ]);
    assert.deepEqual(
      remedies.map(({ change }) => change.id),
      ['free sunday evening', '47 h', 'one session fewer'],
    );
    const back = linesOf(remedies[0]?.plan.placed ?? []).filter((line) => line.startsWith('back'));
    assert.deepEqual(back, ['back opening mon 17:00', 'back opening sun 20:00']);
  });
});
