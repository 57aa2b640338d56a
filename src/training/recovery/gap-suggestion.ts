import type { Interval } from '../statistics/estimate';
import type { RecoveryInterval } from '../statistics/recovery-interval';
import type { CurrentGap, RecoverySubject } from './recovery-subject';

/** Another gap for a kind or region, as the notes suggest it. It is offered, never set. */
export interface GapSuggestion {
  readonly subject: RecoverySubject;
  readonly change: 'longer' | 'shorter';
  /** `undefined` when nothing keeps such sessions apart yet. */
  readonly currentHours: number | undefined;
  /** In steps of 12 h, rounded up. */
  readonly suggestedHours: number;
  /** Of the gap, before it is rounded. */
  readonly hours: number;
  readonly interval: Interval;
  readonly acceptedChance: number;
  /** Pairs of sessions that it stands on, and in how many of them it was still sore. */
  readonly pairs: number;
  readonly sore: number;
}

/** A gap is told to half a day: no interval is narrower. */
export const GAP_STEP_HOURS = 12;

/** A day: without any gap kept, sessions on neighbouring days are what a suggestion has to beat. */
const nextDay = 24;

/**
 * The gap to suggest: the learned one, rounded up to half a day, when the gap kept now lies outside its interval and
 * at least half a day away. One beyond the longest gap seen is not suggested, as nothing was seen there; below the
 * shortest seen, the shortest seen is.
 *
 * @param mayShorten false while pain in a region that it trains is not over
 */
export function gapSuggestion(
  subject: RecoverySubject,
  learned: RecoveryInterval,
  current: CurrentGap | undefined,
  mayShorten: boolean,
): GapSuggestion | undefined {
  const { interval, beyondObserved, observed } = learned;
  if (beyondObserved === 'longer') return undefined;
  const hours = Math.max(learned.hours, observed.lower);
  const suggestedHours = Math.max(1, Math.ceil(hours / GAP_STEP_HOURS)) * GAP_STEP_HOURS;
  const kept = current?.hours ?? nextDay;
  if (Math.abs(suggestedHours - kept) < GAP_STEP_HOURS) return undefined;
  const change = suggestedHours > kept ? 'longer' : 'shorter';
  const isOutside = change === 'longer' ? kept < interval.lower : kept > interval.upper;
  if (!isOutside || (change === 'shorter' && (!current || !mayShorten))) return undefined;
  return {
    subject,
    change,
    currentHours: current?.hours,
    suggestedHours,
    hours: learned.hours,
    interval,
    acceptedChance: learned.acceptedChance,
    pairs: learned.n,
    sore: learned.sore,
  };
}
