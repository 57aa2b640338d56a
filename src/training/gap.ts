import type { LengthOfTime } from '../notation/time/length-of-time';
import type { SessionFacts } from './session-facts';
import type { SessionTimes } from './session-times';

/** A session with its times, when it has any. */
export interface TimedSession {
  readonly facts: SessionFacts;
  readonly times: SessionTimes | undefined;
}

/** How far apart two sessions stand, in the unit in which it was counted, against what was asked. */
export interface Gap {
  readonly countedIn: 'minutes' | 'days';
  /** Real minutes from the end of the earlier to the start of the later, or whole days between their dates. */
  readonly amount: number;
  /** In the same unit. */
  readonly asked: number;
}

const minutesADay = 1440;

/**
 * The gap from `earlier` to `later`: real time from the end of the one to the start of the other, so that a clock
 * change is an hour. Whole days between the dates are counted instead when one of the two has no time, or when the
 * gap is asked in days; a part of a day is then asked as a whole one (`36h` as two days).
 */
export function gapBetween(earlier: TimedSession, later: TimedSession, asked: LengthOfTime): Gap {
  if (asked.unit === 'd' || !earlier.times || !later.times) {
    return {
      countedIn: 'days',
      amount: later.facts.session.day - earlier.facts.session.day,
      asked: Math.ceil(asked.minutes / minutesADay),
    };
  }
  // Sessions that overlap have no gap between them at all.
  const amount = Math.max(0, later.times.start - earlier.times.end);
  return { countedIn: 'minutes', amount, asked: asked.minutes };
}

/** How much of the gap is missing, in minutes; zero or less when it is long enough. */
export function missingMinutes(gap: Gap): number {
  return (gap.asked - gap.amount) * (gap.countedIn === 'days' ? minutesADay : 1);
}
