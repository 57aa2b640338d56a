import { Temporal } from 'temporal-polyfill';
import type { DayNumber } from '../../notation/time/iso-date';
import type { InstantMinutes } from '../../notation/time/zoned-time';
import type { LocalMinutes } from './calendar-time';

/** A clock that is known by how far it is ahead of UTC at any instant. */
export interface ZoneClock {
  /** Minutes ahead of UTC; negative in the west. */
  offsetAt(instant: InstantMinutes): number;
}

/** The clock of UTC. */
export const utcClock: ZoneClock = { offsetAt: () => 0 };

const minutesADay = 1440;

/**
 * The instant at which a clock shows `local`: the first of two, and read with the offset before the gap where the
 * clock skips it (RFC 5545, section 3.3.5).
 */
export function instantAt(clock: ZoneClock, local: LocalMinutes): InstantMinutes {
  const before = clock.offsetAt(local - minutesADay);
  const after = clock.offsetAt(local + minutesADay);
  const early = local - before;
  if (before === after || clock.offsetAt(early) === before) return early;
  const late = local - after;
  return clock.offsetAt(late) === after ? late : early;
}

/** What the clock shows at `instant`. */
export function localAt(clock: ZoneClock, instant: InstantMinutes): LocalMinutes {
  return instant + clock.offsetAt(instant);
}

/**
 * The clock of a zone that this machine knows (a tzdb name). It keeps the offsets with which days began, because the
 * machine takes its time with each. A week that begins and ends with one offset has it all along: no zone has changed
 * its clock twice within a week.
 */
export function namedClock(zone: string): ZoneClock {
  const known = new Map<DayNumber, number>();
  const ask = (instant: InstantMinutes) =>
    Temporal.Instant.fromEpochMilliseconds(Math.floor(instant * 60_000)).toZonedDateTimeISO(zone)
      .offsetNanoseconds / 60e9;
  const atStartOf = (day: DayNumber) => {
    let offset = known.get(day);
    if (offset === undefined) {
      offset = ask(day * minutesADay);
      known.set(day, offset);
    }
    return offset;
  };
  return {
    offsetAt(instant) {
      const day = Math.floor(instant / minutesADay);
      const week = Math.floor(day / 7) * 7;
      const ofWeek = atStartOf(week);
      if (ofWeek === atStartOf(week + 7)) return ofWeek;
      const offset = atStartOf(day);
      return offset === atStartOf(day + 1) ? offset : ask(instant);
    },
  };
}
