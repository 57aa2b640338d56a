/**
 * Invented training weeks for the planning bench: flexibility, strength and skill (and more kinds on
 * request), each some times a week, with gaps, a daily cap, a rest day, evenings and weekends that are
 * free or not, a coach's hour on some Saturdays, kept weekdays, and two trips in a long block.
 */
import { PLANNING } from '../../../src/planning/solver/order';
import type {
  Candidate,
  Need,
  PlanningProblem,
  Rule,
  StandingSession,
} from '../../../src/planning/solver/problem';

/** How large and how hard a block is. */
export interface BlockShape {
  readonly seed: number;
  readonly weeks: number;
  /** Kinds of training, 1 to 5. */
  readonly kinds: number;
  /** Sessions of each kind a week. */
  readonly perWeek: number;
  /** Minutes from one possible start to the next. */
  readonly grid: number;
  /** Whether air between hard sessions and hard days in a row count. */
  readonly air: boolean;
}

const DAY = 24 * 60;
const KINDS = [
  { name: 'flexibility', minutes: 75, gap: 72, hard: true },
  { name: 'strength', minutes: 60, gap: 48, hard: true },
  { name: 'skill', minutes: 45, gap: 24, hard: false },
  { name: 'conditioning', minutes: 45, gap: 24, hard: true },
  { name: 'recovery', minutes: 60, gap: 24, hard: false },
];

/** Numbers from 0 to below 1, always the same for a seed (a linear congruential generator, 48 bits). */
function numbersFrom(seed: number): () => number {
  let state = (BigInt(seed) << 16n) + 0x330en;
  return () => {
    state = (state * 0x5deece66dn + 0xbn) & 0xffff_ffff_ffffn;
    return Number(state >> 16n) / 2 ** 32;
  };
}

/** A block of training weeks. The same shape gives the same block. */
export function trainingBlock(shape: BlockShape): PlanningProblem {
  const next = numbersFrom(shape.seed);
  const below = (limit: number) => Math.floor(next() * limit);
  const kinds = KINDS.slice(0, shape.kinds);
  const kept = kinds.map(() =>
    Array.from({ length: shape.perWeek }, () => ({ weekday: below(7), minute: (17 + below(3)) * 60 })),
  );
  const needs: Need[] = [];
  const standing: StandingSession[] = [];
  for (let week = 0; week < shape.weeks; week += 1) {
    const days = Array.from({ length: 7 }, (_, weekday) => freeHours(week, weekday, below, next));
    kinds.forEach((kind, index) => {
      const candidates = days.flatMap((spans, weekday) =>
        spans.flatMap(([from, to]) => {
          const found: Candidate[] = [];
          for (let minute = from; minute + kind.minutes <= to; minute += shape.grid) {
            const start = (7 * week + weekday) * DAY + minute;
            found.push({
              start,
              end: start + kind.minutes,
              day: 7 * week + weekday,
              deviation: Math.min(...(kept[index] ?? []).map((habit) => distance(habit, weekday, minute))),
              preference: Math.floor(minute / 30) + below(3),
            });
          }
          return found;
        }),
      );
      needs.push({
        id: `${kind.name} ${week}`,
        week,
        count: shape.perWeek,
        importance: index,
        labels: [
          kind.name,
          ...(kind.hard ? ['hard'] : []),
          ...(kind.name === 'recovery' ? [] : ['training']),
        ],
        candidates,
      });
    });
    if (next() < 0.5) {
      const start = (7 * week + 5) * DAY + 14 * 60;
      const labels = ['skill', 'training'];
      standing.push({ id: `coach ${week}`, labels, start, end: start + 60, day: 7 * week + 5 });
    }
  }
  const rules: Rule[] = [
    ...kinds.map(
      ({ name, gap }): Rule => ({ type: 'gap', id: name, earlier: [name], later: [name], minutes: gap * 60 }),
    ),
    { type: 'gap', id: 'hard', earlier: ['hard'], later: ['hard'], minutes: 20 * 60 },
    { type: 'gap', id: 'any', earlier: [], later: [], minutes: 3 * 60 },
    { type: 'cap', id: 'cap', of: ['training'], minutes: 135 },
    { type: 'rest', id: 'rest', of: ['training'], days: 1, required: true },
  ];
  if (shape.air) rules.push(...airRules);
  return { weeks: shape.weeks, needs, standing, rules, order: PLANNING, standingMayBreakRules: true };
}

const airRules: readonly Rule[] = [
  { type: 'row', id: 'row', of: ['hard'] },
  {
    type: 'air',
    id: 'flexible air',
    earlier: ['flexibility'],
    later: ['flexibility'],
    comfortable: 96 * 60,
    step: 720,
  },
  { type: 'air', id: 'hard air', earlier: ['hard'], later: ['hard'], comfortable: 48 * 60, step: 720 },
];

function freeHours(
  week: number,
  weekday: number,
  below: (limit: number) => number,
  next: () => number,
): readonly (readonly [number, number])[] {
  const late = 30 * below(2);
  const away = (week === 3 || week === 8) && weekday >= 1 && weekday <= 3;
  if (next() < 0.15 || away) return [];
  if (weekday < 5) return [[17 * 60 + late, 21 * 60]];
  return [
    [9 * 60, 13 * 60],
    [15 * 60, 19 * 60],
  ];
}

/** How far a place is from a kept weekday and time: half hours, and 8 for each day. */
function distance(habit: { weekday: number; minute: number }, weekday: number, minute: number): number {
  const days = Math.abs(habit.weekday - weekday);
  return 8 * Math.min(days, 7 - days) + Math.floor(Math.abs(habit.minute - minute) / 30);
}
