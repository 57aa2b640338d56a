/**
 * The tables that the search reads. Lists that "follow the rules" have one entry for each rule of that
 * type, in the order of `PreparedProblem`; a list of numbers on a need holds indices into such a list.
 */
import type { Cost, CostLayout } from './cost';
import type {
  AirRule,
  CapRule,
  Label,
  Need,
  PlanningProblem,
  RestRule,
  RowRule,
  StandingSession,
} from './problem';

/** A free place of one need. */
export interface Place {
  /** Index in `PreparedProblem.places`. */
  readonly id: number;
  readonly need: PreparedNeed;
  /** Index in the need's own list of candidates. */
  readonly candidate: number;
  readonly start: number;
  readonly end: number;
  readonly day: number;
  readonly cost: Cost;
  /** Index of `start` among the starts of the need's signature. */
  readonly startIndex: number;
  /** For each signature, the index of its first start that this session leaves open. */
  readonly releases: Int32Array;
}

/** A need with its place in the tables. */
export interface PreparedNeed {
  readonly need: Need;
  /** Index of the need within its week. */
  readonly slot: number;
  /** Needs with the same labels share a signature. */
  readonly signature: number;
  readonly count: number;
  /** Cost of leaving out one of its sessions. */
  readonly leftOut: Cost;
  /** Air rules in which its sessions are the earlier, and the later, ones. */
  readonly airEarlier: readonly number[];
  readonly airLater: readonly number[];
  readonly rows: readonly number[];
  readonly rests: readonly number[];
  readonly caps: readonly number[];
  readonly counts: readonly number[];
  /** Its free places, by start. */
  readonly places: readonly Place[];
}

/** Everything that starts at one moment. */
export interface Moment {
  readonly start: number;
  readonly places: readonly Place[];
  readonly standing: readonly StandingSession[];
}

/** One day, with what the standing sessions make of it. Lists follow the rules. */
export interface PreparedDay {
  readonly moments: readonly Moment[];
  readonly standsInRow: readonly boolean[];
  readonly standsInRest: readonly boolean[];
  /** Days later in the week on which standing sessions train. */
  readonly trainedLater: readonly number[];
  readonly capUsed: readonly number[];
  readonly capLimit: readonly number[];
  /** For each signature, the index of its first start after this day. */
  readonly firstStartAfter: Int32Array;
  /** The first start after this day of a session that asks for the rule's air. */
  readonly firstAirAfter: readonly number[];
}

/** A count rule in one week. */
export interface WeekCount {
  /** Sessions that the minimum asks for beyond the standing ones; may be negative. */
  readonly missing: number;
  /** Sessions that the maximum allows beyond the standing ones. */
  readonly room: number;
  /** Slots of the needs that count. */
  readonly slots: readonly number[];
}

/** A rest rule in one week. */
export interface WeekRest {
  /** More training days than these cost one each. */
  readonly free: number;
  /** More training days than these are not allowed. */
  readonly largest: number;
}

/** One week. Lists follow the rules, except for the needs, which stand by slot. */
export interface PreparedWeek {
  readonly index: number;
  readonly needs: readonly PreparedNeed[];
  readonly days: readonly PreparedDay[];
  readonly counts: readonly WeekCount[];
  readonly rests: readonly WeekRest[];
  readonly needsOfSignature: readonly (readonly PreparedNeed[])[];
  /** The needs whose sessions ask for the rule's air. */
  readonly needsOfAir: readonly (readonly PreparedNeed[])[];
  /** Whether a standing session of the week asks for the rule's air. */
  readonly airStands: readonly boolean[];
}

/** Air rules, by index, in which a session is the earlier or the later one. */
export interface AirRoles {
  readonly earlier: readonly number[];
  readonly later: readonly number[];
}

/** When the next session of a signature may start once a place is taken, by gaps in minutes and in days. */
export function opensAt(prepared: Pick<PreparedProblem, 'starts'>, place: Place, signature: number): number {
  return prepared.starts[signature]?.[place.releases[signature] ?? 0] ?? Infinity;
}

/** The tables of a whole problem. */
export interface PreparedProblem {
  readonly problem: PlanningProblem;
  readonly layout: CostLayout;
  readonly places: readonly Place[];
  readonly weeks: readonly PreparedWeek[];
  /** For each signature, the distinct starts of its places, sorted. */
  readonly starts: readonly Int32Array[];
  readonly airs: readonly AirRule[];
  readonly airRoles: (labels: readonly Label[]) => AirRoles;
  readonly rows: readonly RowRule[];
  readonly rests: readonly RestRule[];
  readonly caps: readonly CapRule[];
  readonly airUnit: Cost;
  readonly rowUnit: Cost;
  readonly shortfallUnit: Cost;
}
