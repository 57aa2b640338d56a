/** What the solver answers. */
import type { Objective } from './order';

/** A session of a need at one of its candidates. */
export interface PlacedSession {
  /** Id of the need. */
  readonly need: string;
  /** Index of the candidate in the need's list. */
  readonly candidate: number;
  readonly start: number;
  readonly end: number;
  readonly day: number;
}

/** How many sessions of a need do not stand. */
export interface LeftOut {
  readonly need: string;
  readonly count: number;
}

/**
 * How sure the plan is.
 * - `proven best`: no plan is better.
 * - `best found`: the search was cut short at its node limit; no plan is better than `bound`.
 * - `impossible`: what stands already breaks rules, so that no plan keeps them.
 */
export type PlanStatus = 'proven best' | 'best found' | 'impossible';

/** A plan. When it is impossible, nothing is placed and the objectives are empty. */
export interface Plan {
  readonly status: PlanStatus;
  /** By start. */
  readonly placed: readonly PlacedSession[];
  /** Needs of which sessions do not stand, in the order of the problem. */
  readonly leftOut: readonly LeftOut[];
  readonly objective: Objective;
  readonly bound: Objective;
  /** When it is impossible: what the standing sessions break. */
  readonly broken: readonly BrokenByStanding[];
  /** Steps the search has made: a measure of work that is the same on every machine. */
  readonly nodes: number;
}

/** A rule that standing sessions break among themselves. */
export interface BrokenByStanding {
  /** Id of the rule, or `undefined` when two sessions overlap. */
  readonly rule: string | undefined;
  /** Ids of the standing sessions. */
  readonly sessions: readonly string[];
}
