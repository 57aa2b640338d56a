/**
 * What the solver is asked. It knows nothing about notes: only sessions with labels, candidate places on
 * a time axis, and rules between labels.
 *
 * Time: `start` and `end` are whole minutes on one axis of *elapsed* time (minutes since any epoch), so
 * that whoever builds the problem has already turned clock changes into real minutes. `day` counts the
 * athlete's calendar days from the first day of the horizon (a negative day lies before it), and serves
 * the rules that speak of days and weeks. Week `w` is days `7w` to `7w + 6`. A session that runs past
 * midnight belongs to the day on which it starts.
 */
import type { Level } from './order';

/** Says what a session is: `kind:flexibility`, `goal:low-split`, `hard`; the words are the caller's. */
export type Label = string;

/**
 * A class of sessions: those that carry *all* of these labels. The empty list is every session.
 */
export type SessionClass = readonly Label[];

/** One place where a session of a need could stand, with what the place costs. */
export interface Candidate {
  readonly start: number;
  readonly end: number;
  readonly day: number;
  /** Cost at the level `deviation`: how far from the weekdays and times really kept. Whole, at least 0. */
  readonly deviation: number;
  /** Cost at the level `preference`: short slot, early or late hour. Whole, at least 0. */
  readonly preference: number;
  /** A session of this need stands here already: leaving the place counts at the level `moved`. */
  readonly standsHere?: boolean;
  /** Ids of the hours, busy times or trips that rule this place out. Absent or empty: the place is free. */
  readonly blockedBy?: readonly string[];
}

/** `count` interchangeable sessions wanted in one week. */
export interface Need {
  readonly id: string;
  /** The week in which they are wanted, 0 for the first. Every candidate lies in it. */
  readonly week: number;
  readonly count: number;
  readonly labels: readonly Label[];
  /**
   * Place in the order of what must not be left out: 0 for the first need of the nearest goal. Needs may
   * share a place. Absent: nothing is lost by leaving these sessions out, except what a rule asks for.
   */
  readonly importance?: number;
  readonly candidates: readonly Candidate[];
}

/**
 * A session that stands and cannot move: booked, done this week, or (`day` below 0) done before the
 * horizon, where it matters only for what must keep a distance from it.
 */
export interface StandingSession {
  readonly id: string;
  readonly labels: readonly Label[];
  readonly start: number;
  readonly end: number;
  readonly day: number;
}

/** At least `minutes` from the end of a session of `earlier` to the start of a later one of `later`. */
export interface GapRule {
  readonly type: 'gap';
  readonly id: string;
  readonly earlier: SessionClass;
  readonly later: SessionClass;
  readonly minutes: number;
}

/**
 * At least `days` days from the day of a session of `earlier` to that of a later one of `later`: gaps that are
 * written in whole days, and gaps around sessions without a time of day. 0 asks for nothing.
 */
export interface DayGapRule {
  readonly type: 'day-gap';
  readonly id: string;
  readonly earlier: SessionClass;
  readonly later: SessionClass;
  readonly days: number;
}

/**
 * Sessions of a class in each week. `max` always holds. `min` is wanted: what is missing counts at the
 * level `shortfall`. Sessions that take no time (done, but written without an hour) may be counted towards
 * the minimum through `countedAlready`, one number a week.
 */
export interface CountRule {
  readonly type: 'count';
  readonly id: string;
  readonly of: SessionClass;
  readonly min?: number;
  readonly max?: number;
  readonly countedAlready?: readonly number[];
}

/** At most `minutes` of sessions of a class on one day. */
export interface CapRule {
  readonly type: 'cap';
  readonly id: string;
  readonly of: SessionClass;
  readonly minutes: number;
}

/**
 * At least `days` days of each week without a session of the class `of` (whatever is not recovery).
 * When `required`, it always holds; otherwise what is missing counts at the level `shortfall`.
 */
export interface RestRule {
  readonly type: 'rest';
  readonly id: string;
  readonly of: SessionClass;
  readonly days: number;
  readonly required: boolean;
}

/** No session of the class may touch the time from `from` until `to` (a region in pain, a trip). */
export interface BlockRule {
  readonly type: 'block';
  readonly id: string;
  readonly of: SessionClass;
  readonly from: number;
  readonly to: number;
}

/**
 * Air: in front of each session of `later`, the time since the end of the last session of `earlier` that
 * started before it should reach `comfortable` minutes. What is missing counts in begun steps of `step` minutes at
 * the level `air`; a coarse step keeps a quarter of an hour of air from outweighing a kept habit.
 */
export interface AirRule {
  readonly type: 'air';
  readonly id: string;
  readonly earlier: SessionClass;
  readonly later: SessionClass;
  readonly comfortable: number;
  readonly step: number;
}

/** Two days in a row that both hold a session of the class count 1 at the level `row`. */
export interface RowRule {
  readonly type: 'row';
  readonly id: string;
  readonly of: SessionClass;
}

export type Rule = GapRule | DayGapRule | CountRule | CapRule | RestRule | BlockRule | AirRule | RowRule;

/**
 * A whole question. Ids of needs, standing sessions, rules and blocking hours are distinct from each
 * other. One body at one time is not a rule that could be left out: no two sessions ever overlap.
 */
export interface PlanningProblem {
  /** Weeks in the horizon, at least 1. */
  readonly weeks: number;
  readonly needs: readonly Need[];
  readonly standing: readonly StandingSession[];
  readonly rules: readonly Rule[];
  /** What counts first; see `order.ts`. */
  readonly order: readonly Level[];
  /**
   * What to do with standing sessions that break rules among themselves. `false`: the problem is
   * impossible. `true`: they are taken as they are, and what is added may not make it worse (a day that
   * already exceeds its cap takes nothing more, a count above its maximum stays where it is).
   */
  readonly standingMayBreakRules: boolean;
}

/** The week in which a day lies; -1 and below before the horizon. */
export function weekOfDay(day: number): number {
  return Math.floor(day / 7);
}

/** Whether a session with these labels belongs to the class. */
export function belongsTo(labels: readonly Label[], sessions: SessionClass): boolean {
  return sessions.every((label) => labels.includes(label));
}
