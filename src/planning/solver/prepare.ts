/**
 * Turns a problem into the tables that the search reads: which places are free at all, what each place
 * costs and closes, and what every week and day begins with. Everything that depends on standing
 * sessions alone is settled here, once.
 */
import { columnsOf } from './columns';
import { addAt, type Cost, type CostLayout, layOutCosts, unitCost, zeroCost } from './cost';
import {
  belongsTo,
  type Label,
  type Need,
  type PlanningProblem,
  type Rule,
  type SessionClass,
  type StandingSession,
  weekOfDay,
} from './problem';
import { blockedByRule, excludeEachOther, gapDays, gapMinutes } from './session-rules';
import { firstAtLeast } from './sorted';
import type { Moment, Place, PreparedDay, PreparedNeed, PreparedProblem, PreparedWeek } from './tables';

/** A need whose list of places is still being filled. */
type OpenNeed = PreparedNeed & { readonly places: Place[] };

/** Sessions with the same labels: all rules treat them alike. */
interface Signature {
  readonly key: string;
  readonly labels: readonly Label[];
}

/** The rules by type. */
function sortRules(problem: PlanningProblem) {
  const of = <T extends Rule['type']>(type: T) =>
    problem.rules.filter((rule): rule is Extract<Rule, { type: T }> => rule.type === type);
  return { airs: of('air'), rows: of('row'), rests: of('rest'), caps: of('cap'), counts: of('count') };
}

type SortedRules = ReturnType<typeof sortRules>;

/**
 * Builds the tables. The problem has been checked before.
 * @throws CostTooLargeError when its costs cannot be added exactly.
 */
export function prepare(problem: PlanningProblem): PreparedProblem {
  const layout = layOutCosts(columnsOf(problem));
  const rules = sortRules(problem);
  const standing = [...problem.standing].sort((a, b) => a.start - b.start);
  const { signatures, needs } = prepareNeeds(problem, layout, rules);
  const gaps = signatures.map((earlier) =>
    signatures.map((later) => gapMinutes(problem, earlier.labels, later.labels)),
  );
  const dayGaps = signatures.map((earlier) =>
    signatures.map((later) => gapDays(problem, earlier.labels, later.labels)),
  );
  const { places, starts } = preparePlaces(problem, layout, standing, needs, gaps, dayGaps);
  return {
    problem,
    layout,
    places,
    weeks: prepareWeeks(problem, rules, standing, needs, places, starts),
    starts,
    airs: rules.airs,
    airRoles: (labels) => ({
      earlier: indicesOf(rules.airs, (rule) => rule.earlier, labels),
      later: indicesOf(rules.airs, (rule) => rule.later, labels),
    }),
    rows: rules.rows,
    rests: rules.rests,
    caps: rules.caps,
    airUnit: unitCost(layout, 'air'),
    rowUnit: unitCost(layout, 'row'),
    shortfallUnit: unitCost(layout, 'shortfall'),
  };
}

function indicesOf<R>(
  rules: readonly R[],
  classOf: (rule: R) => SessionClass,
  labels: readonly Label[],
): number[] {
  return rules.flatMap((rule, index) => (belongsTo(labels, classOf(rule)) ? [index] : []));
}

function prepareNeeds(problem: PlanningProblem, layout: CostLayout, rules: SortedRules) {
  const signatures: Signature[] = [];
  const signatureOf = ({ labels }: Need): number => {
    const key = JSON.stringify([...new Set(labels)].sort());
    const known = signatures.findIndex((signature) => signature.key === key);
    return known >= 0 ? known : signatures.push({ key, labels }) - 1;
  };
  const slots = new Map<number, number>();
  const needs = problem.needs.map((need): OpenNeed => {
    const slot = slots.get(need.week) ?? 0;
    slots.set(need.week, slot + 1);
    return {
      need,
      slot,
      signature: signatureOf(need),
      count: need.count,
      leftOut: leftOutCost(layout, need),
      airEarlier: indicesOf(rules.airs, (rule) => rule.earlier, need.labels),
      airLater: indicesOf(rules.airs, (rule) => rule.later, need.labels),
      rows: indicesOf(rules.rows, (rule) => rule.of, need.labels),
      rests: indicesOf(rules.rests, (rule) => rule.of, need.labels),
      caps: indicesOf(rules.caps, (rule) => rule.of, need.labels),
      counts: indicesOf(rules.counts, (rule) => rule.of, need.labels),
      places: [],
    };
  });
  return { signatures, needs };
}

/** A session left out counts as one that is not at the place where it stood. */
function leftOutCost(layout: CostLayout, need: Need): Cost {
  const cost = zeroCost(layout);
  addAt(layout, cost, 1, ({ level, importance }) => {
    if (level === 'moved') return true;
    if (need.importance === undefined) return false;
    return level === 'leftOut' || (level === 'leftOutByImportance' && importance === need.importance);
  });
  return cost;
}

/** Finds the free places and gives them to their needs. */
function preparePlaces(
  problem: PlanningProblem,
  layout: CostLayout,
  standing: readonly StandingSession[],
  needs: readonly OpenNeed[],
  gaps: readonly (readonly number[])[],
  dayGaps: readonly (readonly number[])[],
) {
  const free = needs.flatMap((need) =>
    need.need.candidates.flatMap((candidate, index) => {
      const { start, end, day } = candidate;
      const session = { labels: need.need.labels, start, end, day };
      const closed =
        (candidate.blockedBy?.length ?? 0) > 0 ||
        blockedByRule(problem, session) ||
        standing.some((other) => excludeEachOther(problem, session, other));
      return closed ? [] : [{ need, candidate, index }];
    }),
  );
  const starts = gaps.map((_, signature) => {
    const own = free.filter(({ need }) => need.signature === signature);
    return Int32Array.from(new Set(own.map(({ candidate }) => candidate.start))).sort();
  });
  const days = new Map(free.map(({ candidate }) => [candidate.start, candidate.day]));
  const startDays = starts.map((list) => list.map((start) => days.get(start) ?? 0));
  free.sort((a, b) => a.candidate.start - b.candidate.start);
  const places = free.map(({ need, candidate, index }, id): Place => {
    const cost = zeroCost(layout);
    addAt(layout, cost, candidate.standsHere === true ? 0 : 1, (column) => column.level === 'moved');
    addAt(layout, cost, candidate.deviation, (column) => column.level === 'deviation');
    addAt(layout, cost, candidate.preference, (column) => column.level === 'preference');
    const place = {
      id,
      need,
      candidate: index,
      start: candidate.start,
      end: candidate.end,
      day: candidate.day,
      cost,
      startIndex: firstAtLeast(starts[need.signature] ?? [], candidate.start),
      releases: Int32Array.from(starts, (list, later) =>
        Math.max(
          firstAtLeast(list, candidate.end + (gaps[need.signature]?.[later] ?? 0)),
          // Days and starts have one order, so a gap in days ends at a start as well.
          firstAtLeast(startDays[later] ?? [], candidate.day + (dayGaps[need.signature]?.[later] ?? 0)),
        ),
      ),
    };
    need.places.push(place);
    return place;
  });
  return { places, starts };
}

function prepareWeeks(
  problem: PlanningProblem,
  rules: SortedRules,
  standing: readonly StandingSession[],
  needs: readonly PreparedNeed[],
  places: readonly Place[],
  starts: readonly Int32Array[],
): PreparedWeek[] {
  const placesByDay = groupByDay(places, 7 * problem.weeks);
  const standingByDay = groupByDay(standing, 7 * problem.weeks);
  const airStarts = rules.airs.map((rule, index) =>
    [
      ...places.filter((place) => place.need.airLater.includes(index)),
      ...standing.filter((session) => session.day >= 0 && belongsTo(session.labels, rule.later)),
    ]
      .map((session) => session.start)
      .sort((a, b) => a - b),
  );
  /** Just after the last start so far. */
  let over = -Infinity;
  const prepareDay = (day: number, inWeek: readonly StandingSession[]): PreparedDay => {
    const today = standingByDay[day] ?? [];
    const dayPlaces = placesByDay[day] ?? [];
    for (const session of [...dayPlaces, ...today]) over = Math.max(over, session.start + 1);
    const capUsed = rules.caps.map((rule) =>
      today
        .filter((session) => belongsTo(session.labels, rule.of))
        .reduce((minutes, session) => minutes + session.end - session.start, 0),
    );
    return {
      moments: momentsOf(dayPlaces, today),
      standsInRow: rules.rows.map((rule) => today.some((session) => belongsTo(session.labels, rule.of))),
      standsInRest: rules.rests.map((rule) => today.some((session) => belongsTo(session.labels, rule.of))),
      trainedLater: rules.rests.map(
        (rule) => daysWith(inWeek, rule.of).filter((trained) => trained > day).length,
      ),
      capUsed,
      capLimit: rules.caps.map((rule, index) => Math.max(rule.minutes, capUsed[index] ?? 0)),
      firstStartAfter: Int32Array.from(starts, (list) => firstAtLeast(list, over)),
      firstAirAfter: airStarts.map((list) => list[firstAtLeast(list, over)] ?? Infinity),
    };
  };
  return Array.from({ length: problem.weeks }, (_, week): PreparedWeek => {
    const inWeek = standing.filter((session) => weekOfDay(session.day) === week);
    const weekNeeds = needs.filter((need) => need.need.week === week);
    return {
      index: week,
      needs: weekNeeds,
      days: Array.from({ length: 7 }, (_, weekday) => prepareDay(7 * week + weekday, inWeek)),
      counts: rules.counts.map((rule) => {
        const stands = inWeek.filter((session) => belongsTo(session.labels, rule.of)).length;
        return {
          missing: (rule.min ?? 0) - stands - (rule.countedAlready?.[week] ?? 0),
          room: Math.max((rule.max ?? Infinity) - stands, 0),
          slots: weekNeeds.filter((need) => belongsTo(need.need.labels, rule.of)).map((need) => need.slot),
        };
      }),
      rests: rules.rests.map((rule) => {
        const free = Math.max(0, 7 - rule.days);
        return { free, largest: rule.required ? Math.max(free, daysWith(inWeek, rule.of).length) : 7 };
      }),
      needsOfSignature: starts.map((_, index) => weekNeeds.filter((need) => need.signature === index)),
      needsOfAir: rules.airs.map((_, index) => weekNeeds.filter((need) => need.airLater.includes(index))),
      airStands: rules.airs.map((rule) => inWeek.some((session) => belongsTo(session.labels, rule.later))),
    };
  });
}

function groupByDay<T extends { readonly day: number }>(sessions: readonly T[], days: number): T[][] {
  const byDay = Array.from({ length: days }, (): T[] => []);
  for (const session of sessions) byDay[session.day]?.push(session);
  return byDay;
}

function momentsOf(places: readonly Place[], standing: readonly StandingSession[]): Moment[] {
  const starts = [...new Set([...places, ...standing].map((session) => session.start))].sort((a, b) => a - b);
  return starts.map((start) => ({
    start,
    places: places.filter((place) => place.start === start),
    standing: standing.filter((session) => session.start === start),
  }));
}

function daysWith(sessions: readonly StandingSession[], of: SessionClass): number[] {
  return [...new Set(sessions.flatMap((session) => (belongsTo(session.labels, of) ? [session.day] : [])))];
}
