import { type InstantMinutes, instantOf } from '../notation/time/zoned-time';
import type { SessionFacts } from './session-facts';

/** When a session runs, in real time; the end is the start when nothing says how long it lasts. */
export interface SessionTimes {
  readonly start: InstantMinutes;
  readonly end: InstantMinutes;
}

/**
 * Start and end of a session on the clock of `zone`, or `undefined` when its line gives no time. A session with a
 * length ends that many real minutes after its start; one with a span ends when the clock shows the span's end.
 */
export function sessionTimes(facts: SessionFacts, zone: string): SessionTimes | undefined {
  const span = facts.session.entry.span?.value;
  if (!span) return undefined;
  const { date } = facts.session;
  const start = instantOf(date, span.start, zone);
  if (span.end === undefined) return { start, end: start + (facts.minutes ?? 0) };
  // A clock that goes back or forth inside the span may show its end before its start.
  return { start, end: Math.max(start, instantOf(date, span.end, zone)) };
}
