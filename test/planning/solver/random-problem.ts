/**
 * Random planning problems for property tests. They are small and dense: few hours, many rules, so that
 * rules meet. All values shrink towards the plainest problem.
 */
import fc from 'fast-check';
import { keepingAfter, PLANNING, REARRANGING } from '../../../src/planning/solver/order';
import type {
  Candidate,
  Need,
  PlanningProblem,
  Rule,
  StandingSession,
} from '../../../src/planning/solver/problem';

const DAY = 24 * 60;
const HOURS = [7, 9, 12, 17, 19, 23];
const LABELS = ['kind:a', 'kind:b', 'hard', 'region:c', 'training'];
const GAPS = [60, 10 * 60, 20 * 60, 24 * 60, 36 * 60, 48 * 60, 72 * 60];

const labels = fc.subarray(LABELS, { minLength: 2 });
const sessionClass = fc.subarray(LABELS, { maxLength: 1 });

/** A place on one of the given days: 45 to 120 minutes, from one of a few hours. */
function place(days: { readonly min: number; readonly max: number }) {
  return fc
    .record({
      day: fc.integer(days),
      hour: fc.constantFrom(...HOURS),
      length: fc.constantFrom(60, 45, 90, 120),
    })
    .map(({ day, hour, length }) => {
      const start = day * DAY + hour * 60;
      return { start, end: start + length, day };
    });
}

function candidate(week: number): fc.Arbitrary<Candidate> {
  return fc
    .record({
      place: place({ min: 7 * week, max: 7 * week + 6 }),
      deviation: fc.nat(4),
      preference: fc.nat(4),
      standsHere: fc.boolean(),
      blockedBy: fc.constantFrom(undefined, undefined, undefined, undefined, 'hours:x', 'hours:y'),
    })
    .map(({ place, deviation, preference, standsHere, blockedBy }) => ({
      ...place,
      deviation,
      preference,
      ...(standsHere ? { standsHere } : {}),
      ...(blockedBy === undefined ? {} : { blockedBy: [blockedBy] }),
    }));
}

function need(weeks: number): fc.Arbitrary<Omit<Need, 'id'>> {
  return fc.nat(weeks - 1).chain((week) =>
    fc
      .record({
        count: fc.integer({ min: 1, max: 3 }),
        labels,
        importance: fc.option(fc.nat(2), { freq: 8, nil: undefined }),
        candidates: fc.uniqueArray(candidate(week), {
          minLength: 2,
          maxLength: 14,
          size: 'max',
          selector: ({ start, end }) => `${start}-${end}`,
        }),
      })
      .map(({ importance, ...rest }) => ({
        ...rest,
        week,
        ...(importance === undefined ? {} : { importance }),
      })),
  );
}

const rule: fc.Arbitrary<Rule> = fc.oneof(
  fc.record({
    type: fc.constant('gap' as const),
    id: fc.constant(''),
    earlier: sessionClass,
    later: sessionClass,
    minutes: fc.constantFrom(...GAPS),
  }),
  sessionClass.chain((wanted) =>
    fc.record({
      type: fc.constant('gap' as const),
      id: fc.constant(''),
      earlier: fc.constant(wanted),
      later: fc.constant(wanted),
      minutes: fc.constantFrom(...GAPS),
    }),
  ),
  fc.record({
    type: fc.constant('day-gap' as const),
    id: fc.constant(''),
    earlier: sessionClass,
    later: sessionClass,
    days: fc.constantFrom(1, 2, 3, 7),
  }),
  fc.record({
    type: fc.constant('count' as const),
    id: fc.constant(''),
    of: sessionClass,
    min: fc.nat(2),
    max: fc.integer({ min: 2, max: 6 }),
    countedAlready: fc.array(fc.nat(1), { maxLength: 1 }),
  }),
  fc.record({
    type: fc.constant('cap' as const),
    id: fc.constant(''),
    of: sessionClass,
    minutes: fc.constantFrom(120, 60, 105, 180),
  }),
  fc.record({
    type: fc.constant('rest' as const),
    id: fc.constant(''),
    of: sessionClass,
    days: fc.integer({ min: 1, max: 4 }),
    required: fc.boolean(),
  }),
  fc.record({ of: sessionClass, from: fc.nat(14 * 24), hours: fc.nat(30) }).map(({ of, from, hours }) => ({
    type: 'block' as const,
    id: '',
    of,
    from: from * 60,
    to: (from + hours) * 60,
  })),
  fc.record({
    type: fc.constant('air' as const),
    id: fc.constant(''),
    earlier: sessionClass,
    later: sessionClass,
    comfortable: fc.constantFrom(...GAPS),
    step: fc.constantFrom(12 * 60, 60, 24 * 60),
  }),
  fc.record({ type: fc.constant('row' as const), id: fc.constant(''), of: sessionClass }),
);

/** A random problem of at most `weeks` weeks and `needs` needs. */
export function randomProblem(limits: {
  readonly weeks: number;
  readonly needs: number;
}): fc.Arbitrary<PlanningProblem> {
  return fc.integer({ min: 1, max: limits.weeks }).chain((weeks) =>
    fc
      .record({
        needs: fc.array(need(weeks), { minLength: 1, maxLength: limits.needs, size: 'max' }),
        standing: fc.array(fc.record({ labels, place: place({ min: -3, max: 7 * weeks - 1 }) }), {
          maxLength: 3,
          size: 'max',
        }),
        rules: fc.array(rule, { maxLength: 7, size: 'max' }),
        order: fc.constantFrom(PLANNING, REARRANGING, keepingAfter(), keepingAfter('air')),
        standingMayBreakRules: fc.constantFrom(true, true, false),
      })
      .map(({ needs, standing, rules, order, standingMayBreakRules }) => ({
        weeks,
        needs: needs.map((each, index): Need => ({ ...each, id: `need:${index}` })),
        standing: standing.map(
          ({ labels, place }, index): StandingSession => ({ id: `standing:${index}`, labels, ...place }),
        ),
        rules: rules.map((each, index): Rule => ({ ...each, id: `rule:${index}` })),
        order,
        standingMayBreakRules,
      })),
  );
}

/**
 * A block of three to six weeks in which the same two kinds of training return, with long gaps and many
 * places at the ends of the weeks, so that much happens across their borders.
 */
export const randomBlock: fc.Arbitrary<PlanningProblem> = fc.integer({ min: 3, max: 6 }).chain((weeks) => {
  const week = (index: number) =>
    fc.tuple(
      ...['a', 'b'].map((kind, importance) =>
        fc
          .record({
            count: fc.integer({ min: 1, max: 2 }),
            candidates: fc.uniqueArray(candidate(index), {
              minLength: 4,
              maxLength: 10,
              size: 'max',
              selector: ({ start, end }) => `${start}-${end}`,
            }),
          })
          .map(
            (each): Need => ({
              ...each,
              id: `${kind} ${index}`,
              week: index,
              importance,
              labels: [`kind:${kind}`, 'hard'],
            }),
          ),
      ),
    );
  return fc
    .record({
      needs: fc.tuple(...Array.from({ length: weeks }, (_, index) => week(index))),
      gapA: fc.constantFrom(72, 48, 96),
      gapB: fc.constantFrom(48, 36, 72),
      gapHard: fc.constantFrom(20, 10, 36),
      soft: fc.subarray<Rule>([
        { type: 'row', id: 'row', of: ['hard'] },
        { type: 'air', id: 'air', earlier: ['hard'], later: ['hard'], comfortable: 60 * 60, step: 720 },
        { type: 'rest', id: 'rest', of: ['hard'], days: 4, required: false },
      ]),
    })
    .map(({ needs, gapA, gapB, gapHard, soft }): PlanningProblem => {
      const gap = (label: string, count: number): Rule => ({
        type: 'gap',
        id: label,
        earlier: [label],
        later: [label],
        minutes: count * 60,
      });
      return {
        weeks,
        needs: needs.flat(),
        standing: [],
        rules: [gap('kind:a', gapA), gap('kind:b', gapB), gap('hard', gapHard), ...soft],
        order: PLANNING,
        standingMayBreakRules: true,
      };
    });
});
