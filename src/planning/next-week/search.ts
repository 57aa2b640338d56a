import type { DayNumber } from '../../notation/time/iso-date';
import type { SessionFacts } from '../../training/session-facts';
import type { Place } from './place';
import type { PlacementRules } from './placement-rules';

/** Like sessions to place, with the places at which each may stand on its own. */
export interface Group {
  readonly name: string;
  readonly count: number;
  readonly places: readonly Place[];
}

/** The places found for each group, by its name. */
export type Found = ReadonlyMap<string, readonly Place[]>;

/**
 * Cost of every session that stands on a day already: an empty day is worth a walk away from the usual hour, and
 * another day altogether when the other session is of the same kind.
 */
const crowding = { other: 8, sameKind: 200 } as const;

function factsOf(place: Place): SessionFacts {
  return place.timed.facts;
}

function crowdCost(place: Place, sessions: readonly SessionFacts[]): number {
  const { kind } = factsOf(place).session;
  return sessions
    .filter(({ session }) => session.day === place.day)
    .reduce((cost, { session }) => cost + (session.kind === kind ? crowding.sameKind : crowding.other), 0);
}

/** The places as one would like to try them: most like the athlete's own weeks first. */
export function byLiking(places: readonly Place[], sessions: readonly SessionFacts[]): readonly Place[] {
  return places
    .map((place) => ({ place, cost: place.cost + crowdCost(place, sessions) }))
    .sort((one, other) => one.cost - other.cost || one.place.id - other.place.id)
    .map(({ place }) => place);
}

/** Remembers which pairs of places break a rule together. */
function clashes(rules: PlacementRules): (one: Place, other: Place) => boolean {
  const known = new Map<number, boolean>();
  return (one, other) => {
    const key = one.id < other.id ? one.id * 65_536 + other.id : other.id * 65_536 + one.id;
    let answer = known.get(key);
    if (answer === undefined) {
      answer = rules.between(one, other) !== undefined;
      known.set(key, answer);
    }
    return answer;
  };
}

/** The places of a group that are left beside what is placed. */
function placesLeft(
  places: readonly Place[],
  placed: readonly Place[],
  rules: PlacementRules,
  accepts: (place: Place) => boolean,
): readonly Place[] {
  // Whether a day or a week is full does not depend on the hour.
  const full = new Map<DayNumber, boolean>();
  return places.filter((place) => {
    if (!accepts(place)) return false;
    let isFull = full.get(place.day);
    if (isFull === undefined) {
      isFull = rules.inWeek(place, placed) !== undefined;
      full.set(place.day, isFull);
    }
    return !isFull;
  });
}

/**
 * Finds a place for every session so that no rule between them is broken: depth first, the group with the fewest
 * places to spare next, the place most like the athlete's own weeks first. Always the same answer to the same
 * question.
 * @param standing The sessions that stand in the week already.
 * @param limit How many places are tried before the search gives up.
 * @returns `undefined` when there is no such arrangement, or the limit was reached before one was found.
 */
export function placeAll(
  groups: readonly Group[],
  rules: PlacementRules,
  standing: readonly SessionFacts[],
  limit: number,
): Found | undefined {
  const clash = clashes(rules);
  const chosen: { readonly group: string; readonly place: Place }[] = [];
  let tried = 0;

  const search = (open: readonly Group[]): boolean => {
    if (open.length === 0) return true;
    if (!rules.canHold(open)) return false;
    const next = open.reduce((best, one) =>
      one.places.length - one.count < best.places.length - best.count ? one : best,
    );
    const placed = chosen.map(({ place }) => place);
    // A place at which one of several like sessions failed fails for the others as well.
    const failed = new Set<Place>();
    for (const place of byLiking(next.places, [...standing, ...placed.map(factsOf)])) {
      tried += 1;
      if (tried > limit) return false;
      chosen.push({ group: next.name, place });
      const all = [...placed, place];
      const left = open
        .map((one) => (one === next ? { ...one, count: one.count - 1 } : one))
        .filter(({ count }) => count > 0)
        .map((one) => ({
          ...one,
          places: placesLeft(one.places, all, rules, (other) => !failed.has(other) && !clash(place, other)),
        }));
      if (left.every((one) => one.places.length >= one.count) && search(left)) return true;
      chosen.pop();
      failed.add(place);
    }
    return false;
  };

  if (!search(groups.filter(({ count }) => count > 0))) return undefined;
  return new Map(
    groups.map(({ name }) => [name, chosen.filter(({ group }) => group === name).map(({ place }) => place)]),
  );
}
