import { Temporal } from 'temporal-polyfill';
import type { IsoDate } from './iso-date';
import type { WallMinutes } from './wall-clock';

/** Minutes since 1970-01-01T00:00Z: real elapsed time, in which a clock change is an hour and not a bug. */
export type InstantMinutes = number;

/** Whether this machine's time zone data knows `zone` (a tzdb name such as `Europe/Lisbon`, or `UTC`). */
export function isKnownZone(zone: string): boolean {
  if (!/^[A-Za-z][A-Za-z0-9_+-]*(\/[A-Za-z0-9_+-]+)*$/.test(zone)) return false;
  try {
    new Intl.DateTimeFormat('en', { timeZone: zone });
    return true;
  } catch {
    return false;
  }
}

/**
 * The instant at which the clock of `zone` shows `minutes` on `date`.
 * A time that a clock change skips is read with the offset before the gap, one that happens twice as the
 * first of the two (RFC 5545 section 3.3.5, the "compatible" choice of Temporal).
 * @throws RangeError when `zone` is not known; ask {@link isKnownZone} first.
 */
export function instantOf(date: IsoDate, minutes: WallMinutes, zone: string): InstantMinutes {
  const midnight = Temporal.PlainDateTime.from({
    year: Number(date.slice(0, 4)),
    month: Number(date.slice(5, 7)),
    day: Number(date.slice(8, 10)),
  });
  const wall = midnight.add({ minutes });
  return wall.toZonedDateTime(zone, { disambiguation: 'compatible' }).epochMilliseconds / 60_000;
}

/** Date and wall clock that `zone` shows at `instant`. */
export function wallClockAt(
  instant: InstantMinutes,
  zone: string,
): { readonly date: IsoDate; readonly minutes: WallMinutes } {
  const zoned = Temporal.Instant.fromEpochMilliseconds(instant * 60_000).toZonedDateTimeISO(zone);
  return { date: zoned.toPlainDate().toString() as IsoDate, minutes: zoned.hour * 60 + zoned.minute };
}
