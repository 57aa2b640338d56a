import type { PerWeek } from '../notation/entries';
import type { LengthOfTime } from '../notation/time/length-of-time';
import type { SessionFacts } from './session-facts';
import { totalMinutes } from './week-summary';

/** How far the sessions of a week fall short of what was asked. */
export interface WeekShortfall {
  readonly countedIn: 'sessions' | 'minutes';
  readonly held: number;
  readonly asked: number;
  /** How many more sessions would do, each as long as the need says; 1 when nothing says how long. */
  readonly missingSessions: number;
}

/**
 * What `sessions` lack of `asked`, or `undefined` when they are enough. Where a need gives sessions a length, they
 * can be enough in number and still fall short in minutes; a shortfall below one session's length is let pass.
 */
export function weekShortfall(
  asked: PerWeek,
  sessions: readonly SessionFacts[],
  length?: LengthOfTime,
): WeekShortfall | undefined {
  const minutes = totalMinutes(sessions);
  if (asked.count === undefined) {
    const missing = asked.minutes - minutes;
    if (missing <= 0) return undefined;
    const missingSessions = length ? Math.ceil(missing / length.minutes) : 1;
    return { countedIn: 'minutes', held: minutes, asked: asked.minutes, missingSessions };
  }
  const missing = asked.count - sessions.length;
  if (missing > 0) {
    return { countedIn: 'sessions', held: sessions.length, asked: asked.count, missingSessions: missing };
  }
  const askedMinutes = asked.count * (length?.minutes ?? 0);
  const missingSessions = length ? Math.floor((askedMinutes - minutes) / length.minutes) : 0;
  return missingSessions > 0
    ? { countedIn: 'minutes', held: minutes, asked: askedMinutes, missingSessions }
    : undefined;
}

/** The first session with which a week holds more than `most`, and how much it holds in all. */
export function firstAbove(
  most: PerWeek,
  sessions: readonly SessionFacts[],
): { readonly session: SessionFacts; readonly held: number; readonly allowed: number } | undefined {
  const inSessions = most.count !== undefined;
  const allowed = inSessions ? most.count : most.minutes;
  const weigh = (one: SessionFacts): number => (inSessions ? 1 : (one.minutes ?? 0));
  let held = 0;
  let above: SessionFacts | undefined;
  for (const session of sessions) {
    held += weigh(session);
    if (above === undefined && held > allowed) above = session;
  }
  return above && { session: above, held, allowed };
}
