import { type NotEstimable, notEstimable } from './estimate';
import { mean, sampleStandardDeviation, sum } from './moments';

/** A load in arbitrary units (rating x minutes), or `undefined` where the notes do not say. Unknown is not zero. */
export type Load = number | undefined;

/** The load of several sessions or days. */
export interface LoadTotal {
  /** How many were added, known and unknown. */
  readonly n: number;
  readonly unknown: number;
  /** The sum, when every part of it is known. */
  readonly total: Load;
  /** The sum of the known parts: a lower bound when something is unknown. */
  readonly knownTotal: number;
}

export type MonotonyReason =
  /** A day's load is not known. */
  | 'unknown-loads'
  /** All seven days are rest days. */
  | 'no-load'
  /** All seven days are alike, so there is no spread to divide by. */
  | 'no-variation';

/** Seven calendar days. */
export interface WeekLoad extends LoadTotal {
  readonly status: 'estimated';
  readonly mean: Load;
  /** Sample standard deviation (divisor 6) of the seven days, rest days counted as 0. */
  readonly standardDeviation: Load;
  /** Mean over standard deviation; "n/a" rather than infinite. */
  readonly monotony: number | NotEstimable<MonotonyReason>;
  /** Week load x monotony. */
  readonly strain: number | NotEstimable<MonotonyReason>;
}

const DAYS = 7;

/**
 * Session-RPE load in arbitrary units: rating (0..10) x minutes. `undefined` when either is not known.
 * Source: Foster C et al (2001) J Strength Cond Res 15:109-115. Not comparable between people, blind to tissue.
 */
export function sessionLoad(rating: number | undefined, minutes: number | undefined): Load {
  return rating === undefined || minutes === undefined ? undefined : rating * minutes;
}

/** Adds the loads of a day's sessions. A day without a session is a rest day with load 0. */
export function totalLoad(loads: readonly Load[]): LoadTotal {
  const known = loads.filter((load) => load !== undefined);
  const unknown = loads.length - known.length;
  const knownTotal = sum(known);
  return { n: loads.length, unknown, total: unknown === 0 ? knownTotal : undefined, knownTotal };
}

/**
 * Load, monotony and strain of seven calendar days, rest days as 0.
 *
 * Source: Foster C (1998) Med Sci Sports Exerc 30:1164-1168. The paper does not say which standard deviation; here it
 * is the sample one. With the population one monotony is 1.080 times as high. With k alike sessions on seven days
 * monotony is sqrt(6k / (7(7 - k))) whatever their load, so a value above 2 means six days alike, and no more.
 *
 * @param days loads of exactly seven consecutive days
 */
export function weekLoad(days: readonly Load[]): WeekLoad | NotEstimable<'too-few-days'> {
  if (days.length > DAYS) throw new RangeError(`A week has seven days, not ${days.length}`);
  if (days.length < DAYS) {
    return notEstimable(days.length, 'too-few-days', [{ what: 'days', have: days.length, need: DAYS }]);
  }
  const week = totalLoad(days);
  const known = days.filter((load) => load !== undefined);
  if (week.total === undefined) {
    const unknown = notEstimable(DAYS, 'unknown-loads', [
      { what: 'known-days', have: known.length, need: DAYS },
    ]);
    return {
      status: 'estimated',
      ...week,
      mean: undefined,
      standardDeviation: undefined,
      monotony: unknown,
      strain: unknown,
    };
  }
  const average = mean(known) ?? 0;
  const spread = sampleStandardDeviation(known) ?? 0;
  const base = { status: 'estimated', ...week, mean: average, standardDeviation: spread } as const;
  // Compared as values: rounding can leave a tiny spread among seven alike days.
  if (Math.max(...known) === Math.min(...known)) {
    const flat = notEstimable(DAYS, week.total === 0 ? 'no-load' : 'no-variation');
    return { ...base, standardDeviation: 0, monotony: flat, strain: flat };
  }
  const monotony = average / spread;
  return { ...base, monotony, strain: week.total * monotony };
}
