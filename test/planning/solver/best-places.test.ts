import assert from 'node:assert/strict';
import { bestPlaces } from '../../../src/planning/solver/best-places';
import { valueAt } from '../../../src/planning/solver/order';
import type { Rule } from '../../../src/planning/solver/problem';
import { solve } from '../../../src/planning/solver/solve';
import { at, hours, linesOf, need, problemOf } from './problem-of';

const apart: Rule = { type: 'gap', id: '24 h', earlier: [], later: [], minutes: hours(24) };

describe('best places', () => {
  const week = ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'];
  const problem = problemOf({
    needs: [
      need('flexibility', [at('wed 18:00')]),
      need(
        'strength',
        week.map((day, index) => at(`${day} 18:00`, { deviation: Math.abs(index - 4) })),
        { importance: 1 },
      ),
    ],
    rules: [apart],
  });

  it('gives the legal places for one session, the best first, with what each costs more than now', () => {
    const { placed } = solve(problem);
    assert.deepEqual(linesOf(placed), ['flexibility wed 18:00', 'strength fri 18:00']);
    const places = bestPlaces(problem, placed, 'strength', at('fri 18:00').start);
    assert.deepEqual(
      places.map(({ session, difference }) => [linesOf([session])[0], valueAt(difference, 'deviation')]),
      [
        ['strength sat 18:00', 1],
        ['strength sun 18:00', 2],
        ['strength mon 18:00', 4],
      ],
    );
  });

  it('gives places for a session that does not stand yet', () => {
    const placed = solve(problem).placed.filter((session) => session.need !== 'strength');
    const [best] = bestPlaces(problem, placed, 'strength', undefined, 1);
    assert.equal(best === undefined ? '' : linesOf([best.session])[0], 'strength fri 18:00');
    assert.equal(best === undefined ? 0 : valueAt(best.difference, 'leftOut'), -1);
  });

  it('does not blame a session for what others break among themselves', () => {
    const crowded = problemOf({
      needs: [
        need('one', [at('mon 18:00')]),
        need('other', [at('tue 8:00')]),
        need('moving', [at('thu 18:00'), at('fri 18:00'), at('tue 20:00')]),
      ],
      rules: [apart],
    });
    const placed = ['one', 'other', 'moving'].flatMap((id) => {
      const candidate = crowded.needs.find((each) => each.id === id)?.candidates[0];
      return candidate === undefined
        ? []
        : [{ need: id, candidate: 0, start: candidate.start, end: candidate.end, day: candidate.day }];
    });
    const places = bestPlaces(crowded, placed, 'moving', at('thu 18:00').start);
    assert.deepEqual(linesOf(places.map(({ session }) => session)), ['moving fri 18:00']);
  });
});
