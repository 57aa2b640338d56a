/**
 * What a week must still cost, seen from the beginning of one of its days: the second part of the
 * search's lower bound. It sees what the bounds of single needs cannot: how much fits into a day, days in
 * a row, rest days, minima and maxima.
 *
 * It is the exact answer to an easier question, in which the gaps and the air between sessions of
 * *different* days are forgotten, and a day takes every mix of sessions of which any two could stand
 * together there. Then only the counts so far matter, not the hours, and the days can be solved backwards.
 */
import { type Cost, compareCosts, multipleOf, sumOf, zeroCost } from './cost';
import {
  opensAt,
  type Place,
  type PreparedDay,
  type PreparedNeed,
  type PreparedProblem,
  type PreparedWeek,
} from './tables';

/** One mix of sessions for one day. */
interface DayMix {
  /** Sessions of each need, by slot. */
  readonly counts: readonly number[];
  readonly cost: Cost;
  /** Bits: row rules, and rest rules, whose classes the day holds, standing sessions included. */
  readonly rows: number;
  readonly rests: number;
}

/** Where a week stands at the beginning of a day. */
export interface WeekPosition {
  readonly day: number;
  /** Sessions of each need that stand so far, by slot. */
  readonly counts: readonly number[];
  /** Bits: row rules for which a session on this day would make a new row. */
  readonly due: number;
  /** For each rest rule, training days before this day. */
  readonly trained: readonly number[];
}

/** Beyond these sizes the bound would cost more than it saves. */
const MOST_MIXES = 200;
const MOST_COUNTS = 20_000;
const MOST_ROW_RULES = 6;
const MOST_REST_RULES = 3;

/** The bound for one week. What it has worked out it keeps. */
export class WeekBound {
  private readonly known: Map<number, Cost>[] = Array.from({ length: 8 }, () => new Map());

  private constructor(
    private readonly prepared: PreparedProblem,
    private readonly week: PreparedWeek,
    private readonly mixes: readonly (readonly DayMix[])[],
  ) {}

  /** Builds the bound, or `undefined` for a week with too many possibilities. */
  static of(prepared: PreparedProblem, week: PreparedWeek): WeekBound | undefined {
    const counts = week.needs.reduce((product, need) => product * (need.count + 1), 1);
    if (counts > MOST_COUNTS) return undefined;
    if (prepared.rows.length > MOST_ROW_RULES || prepared.rests.length > MOST_REST_RULES) return undefined;
    const mixes: DayMix[][] = [];
    for (const day of week.days) {
      const found = mixesOf(prepared, week, day);
      if (found === undefined) return undefined;
      mixes.push(found);
    }
    return new WeekBound(prepared, week, mixes);
  }

  /**
   * The least that the days from a position on cost, with everything that is settled at the end of the
   * week: sessions left out, minima and rest days.
   */
  least(position: WeekPosition): Cost {
    const key = this.keyOf(position);
    const known = this.known[position.day]?.get(key);
    if (known !== undefined) return known;
    const least = position.day === 7 ? this.settle(position) : this.solveDay(position);
    this.known[position.day]?.set(key, least);
    return least;
  }

  private keyOf({ counts, due, trained }: WeekPosition): number {
    let key = 0;
    this.week.needs.forEach((need, slot) => {
      key = key * (need.count + 1) + (counts[slot] as number);
    });
    key = key * 2 ** MOST_ROW_RULES + due;
    for (const days of trained) key = key * 8 + days;
    return key;
  }

  private settle({ counts, trained }: WeekPosition): Cost {
    let cost = zeroCost(this.prepared.layout);
    for (const need of this.week.needs) {
      const left = need.count - (counts[need.slot] as number);
      if (left > 0) cost = sumOf(cost, multipleOf(need.leftOut, left));
    }
    let missing = 0;
    for (const rule of this.week.counts) {
      missing += Math.max(
        0,
        rule.slots.reduce((left, slot) => left - (counts[slot] as number), rule.missing),
      );
    }
    this.week.rests.forEach((rest, rule) => {
      missing += Math.max(0, (trained[rule] as number) - rest.free);
    });
    return sumOf(cost, multipleOf(this.prepared.shortfallUnit, missing));
  }

  private solveDay(position: WeekPosition): Cost {
    const { prepared, week } = this;
    const day = week.days[position.day] as PreparedDay;
    let best: Cost | undefined;
    for (const mix of this.mixes[position.day] ?? []) {
      const counts = position.counts.map((count, slot) => count + (mix.counts[slot] as number));
      if (week.needs.some((need) => (counts[need.slot] as number) > need.count)) continue;
      if (
        week.counts.some((rule) => rule.slots.reduce((sum, s) => sum + (counts[s] as number), 0) > rule.room)
      ) {
        continue;
      }
      const trained = position.trained.map((days, rule) => days + ((mix.rests >> rule) & 1));
      const tooMany = week.rests.some(
        (rest, rule) =>
          day.standsInRest[rule] !== true &&
          ((mix.rests >> rule) & 1) === 1 &&
          (trained[rule] as number) + (day.trainedLater[rule] as number) > rest.largest,
      );
      if (tooMany) continue;
      const rows = bitCount(mix.rows & position.due);
      const later = this.least({ day: position.day + 1, counts, due: mix.rows, trained });
      const cost = sumOf(sumOf(mix.cost, later), multipleOf(prepared.rowUnit, rows));
      if (best === undefined || compareCosts(cost, best) < 0) best = cost;
    }
    return best ?? zeroCost(prepared.layout);
  }
}

/** What one need could do on one day. */
interface DayNeed {
  readonly need: PreparedNeed;
  /** Least cost of 0, 1, ... sessions; as many as the day could hold. */
  readonly costs: readonly Cost[];
  readonly shortest: number;
  /** For each signature, the earliest time at which a place of the need leaves its next session open. */
  readonly opens: readonly number[];
  readonly lastStart: number;
}

function mixesOf(prepared: PreparedProblem, week: PreparedWeek, day: PreparedDay): DayMix[] | undefined {
  const places = day.moments.flatMap((moment) => moment.places);
  const needs = week.needs.flatMap((need) => {
    const own = places.filter((place) => place.need === need);
    return own.length > 0 && need.count > 0 ? [dayNeed(prepared, need, own)] : [];
  });
  const most = mostSessions(prepared, places);
  const mixes: DayMix[] = [];
  const counts = week.needs.map(() => 0);
  /** Decides about the needs from `index` on. @returns false when there are too many mixes. */
  const choose = (index: number, chosen: readonly DayNeed[], sessions: number, cost: Cost): boolean => {
    const next = needs[index];
    if (next === undefined) {
      mixes.push({
        counts: [...counts],
        cost,
        rows: bitsOf(
          prepared.rows,
          (rule) => day.standsInRow[rule] === true || chosenIn(chosen, 'rows', rule),
        ),
        rests: bitsOf(
          prepared.rests,
          (rule) => day.standsInRest[rule] === true || chosenIn(chosen, 'rests', rule),
        ),
      });
      return mixes.length <= MOST_MIXES;
    }
    if (!choose(index + 1, chosen, sessions, cost)) return false;
    if (!chosen.every((other) => fitTogether(other, next))) return true;
    for (let count = 1; count < next.costs.length && sessions + count <= most; count += 1) {
      counts[next.need.slot] = count;
      const fits = capsHold(prepared, day, [...chosen, next], counts);
      const more = sumOf(cost, next.costs[count] as Cost);
      if (fits && !choose(index + 1, [...chosen, next], sessions + count, more)) return false;
    }
    counts[next.need.slot] = 0;
    return true;
  };
  return choose(0, [], 0, zeroCost(prepared.layout)) ? mixes : undefined;
}

function dayNeed(prepared: PreparedProblem, need: PreparedNeed, places: readonly Place[]): DayNeed {
  const holds = Math.min(
    need.count,
    packed(places, (place) => opensAt(prepared, place, need.signature)),
  );
  const cheapest = places.map((place) => place.cost).sort(compareCosts);
  const costs = [zeroCost(prepared.layout)];
  for (let count = 0; count < holds; count += 1) {
    costs.push(sumOf(costs[count] as Cost, cheapest[count] as Cost));
  }
  return {
    need,
    costs,
    shortest: Math.min(...places.map((place) => place.end - place.start)),
    opens: prepared.starts.map((_, signature) =>
      Math.min(...places.map((place) => opensAt(prepared, place, signature))),
    ),
    lastStart: Math.max(...places.map((place) => place.start)),
  };
}

/** How many of these places can stand together when each closes the time until `opens`: the earliest of it first. */
function packed(places: readonly Place[], opens: (place: Place) => number): number {
  const spans = places.map((place) => ({ start: place.start, open: opens(place) }));
  let free = -Infinity;
  let count = 0;
  for (const { start, open } of spans.sort((a, b) => a.open - b.open)) {
    if (start < free) continue;
    count += 1;
    free = open;
  }
  return count;
}

function mostSessions(prepared: PreparedProblem, places: readonly Place[]): number {
  const signatures = [...new Set(places.map((place) => place.need.signature))];
  return packed(places, (place) =>
    Math.min(...signatures.map((signature) => opensAt(prepared, place, signature))),
  );
}

/** Whether some place of one need and some place of the other could both stand on the day. */
function fitTogether(a: DayNeed, b: DayNeed): boolean {
  const opens = (first: DayNeed, second: DayNeed) => first.opens[second.need.signature] ?? Infinity;
  return opens(a, b) <= b.lastStart || opens(b, a) <= a.lastStart;
}

function capsHold(
  prepared: PreparedProblem,
  day: PreparedDay,
  chosen: readonly DayNeed[],
  counts: readonly number[],
): boolean {
  return prepared.caps.every((_, rule) => {
    const minutes = chosen
      .filter(({ need }) => need.caps.includes(rule))
      .reduce((sum, { need, shortest }) => sum + shortest * (counts[need.slot] as number), 0);
    return minutes === 0 || (day.capUsed[rule] as number) + minutes <= (day.capLimit[rule] as number);
  });
}

function chosenIn(chosen: readonly DayNeed[], list: 'rows' | 'rests', rule: number): boolean {
  return chosen.some(({ need }) => need[list].includes(rule));
}

function bitsOf(rules: readonly unknown[], holds: (rule: number) => boolean): number {
  return rules.reduce((bits: number, _, rule) => (holds(rule) ? bits | (1 << rule) : bits), 0);
}

function bitCount(bits: number): number {
  let count = 0;
  for (let rest = bits; rest !== 0; rest &= rest - 1) count += 1;
  return count;
}
