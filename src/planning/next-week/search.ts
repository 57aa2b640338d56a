import type { SessionFacts } from '../../training/session-facts';
import type { Place } from './place';
import type { PlacementRules } from './placement-rules';

/** A session to place, with the places at which it may stand on its own. */
export interface ToPlace {
  /** The same for sessions that can take each other's place. */
  readonly group: string;
  readonly places: readonly Place[];
}

/**
 * Cost of every session that stands on a day already: an empty day is worth a walk away from the usual hour, and
 * another day altogether when the other session is of the same kind.
 */
const crowding = { other: 8, sameKind: 200 } as const;

/** A session not placed yet, in the middle of the search. */
interface Open extends ToPlace {
  readonly index: number;
}

function slotOf(place: Place): string {
  return `${place.day} ${place.start ?? ''}`;
}

function factsOf(place: Place): SessionFacts {
  return place.timed.facts;
}

function crowdCost(place: Place, sessions: readonly SessionFacts[]): number {
  const { kind } = factsOf(place).session;
  return sessions
    .filter(({ session }) => session.day === place.day)
    .reduce((cost, { session }) => cost + (session.kind === kind ? crowding.sameKind : crowding.other), 0);
}

/**
 * Finds a place for every session so that no rule between them is broken: depth first, the session with the
 * fewest places left next, the place most like the athlete's own weeks first. Always the same answer to the same
 * question.
 * @param standing The sessions that stand in the week already.
 * @param limit How many places are tried before the search gives up.
 * @returns One place for each session, in their order, or `undefined` when there is none or the limit was reached.
 */
export function placeAll(
  sessions: readonly ToPlace[],
  rules: PlacementRules,
  standing: readonly SessionFacts[],
  limit: number,
): readonly Place[] | undefined {
  const chosen = new Map<number, Place>();
  const known = new Map<number, boolean>();
  let tried = 0;

  const clash = (one: Place, other: Place): boolean => {
    const key = one.id < other.id ? one.id * 65_536 + other.id : other.id * 65_536 + one.id;
    let answer = known.get(key);
    if (answer === undefined) {
      answer = rules.between(one, other) !== undefined;
      known.set(key, answer);
    }
    return answer;
  };

  const search = (open: readonly Open[]): boolean => {
    if (open.length === 0) return true;
    const next = open.reduce((best, one) => (one.places.length < best.places.length ? one : best));
    const others = open.filter((one) => one !== next);
    const placed = [...chosen.values()];
    const inOrder = next.places
      .map((place) => ({ place, cost: place.cost + crowdCost(place, [...standing, ...placed.map(factsOf)]) }))
      .sort((one, other) => one.cost - other.cost || one.place.id - other.place.id);
    // A slot in which one of several like sessions failed fails for the others as well.
    const failed = new Set<string>();
    for (const { place } of inOrder) {
      tried += 1;
      if (tried > limit) return false;
      chosen.set(next.index, place);
      const soFar = [...placed, place];
      const left = others.map((one) => ({
        ...one,
        places: one.places.filter(
          (candidate) =>
            !(one.group === next.group && failed.has(slotOf(candidate))) &&
            !clash(place, candidate) &&
            rules.inWeek(candidate, soFar) === undefined,
        ),
      }));
      if (left.every((one) => one.places.length > 0) && search(left)) return true;
      chosen.delete(next.index);
      failed.add(slotOf(place));
    }
    return false;
  };

  if (sessions.some((one) => one.places.length === 0)) return undefined;
  if (!search(sessions.map((one, index) => ({ ...one, index })))) return undefined;
  return sessions.flatMap((_, index) => chosen.get(index) ?? []);
}
