import { type DayNumber, dayNumber, parseIsoDate } from '../../notation/time/iso-date';
import type { CalendarProperty } from './property';

/** Minutes since 1970-01-01T00:00 on some clock, which a zone turns into an instant. */
export type LocalMinutes = number;

/** A date or a time as a calendar file writes it (RFC 5545, sections 3.3.4 and 3.3.5). */
export type CalendarTime =
  | { readonly kind: 'date'; readonly day: DayNumber }
  | {
      readonly kind: 'time';
      readonly local: LocalMinutes;
      /** `utc`, a zone's name in the file, or `undefined` for a time on whatever clock is looked at. */
      readonly zone: 'utc' | { readonly name: string } | undefined;
    };

const shape = /^(\d{4})(\d{2})(\d{2})(?:T(\d{2})(\d{2})(\d{2})(Z?))?$/;

/**
 * Reads `20260301`, `20260301T183000` or `20260301T173000Z`; `undefined` when it is neither, or in no calendar.
 * @param zone name in the property's `TZID`; a time in UTC stays one
 */
export function readCalendarTime(text: string, zone: string | undefined): CalendarTime | undefined {
  const match = shape.exec(text.trim());
  const date = match ? parseIsoDate(`${match[1]}-${match[2]}-${match[3]}`) : undefined;
  if (!match || date === undefined) return undefined;
  const day = dayNumber(date);
  const [, , , , hour, minute, second, utc] = match;
  if (hour === undefined) return { kind: 'date', day };
  // The second 60 is a leap second.
  if (Number(hour) > 23 || Number(minute) > 59 || Number(second) > 60) return undefined;
  return {
    kind: 'time',
    local: day * 1440 + Number(hour) * 60 + Number(minute) + Number(second) / 60,
    zone: utc === 'Z' ? 'utc' : zone === undefined ? undefined : { name: zone },
  };
}

/** The times in a property, which may hold several with commas between; `undefined` for each that is none. */
export function timesIn({ value, parameters }: CalendarProperty): readonly (CalendarTime | undefined)[] {
  return value.split(',').map((one) => readCalendarTime(one, parameters.tzid));
}

/** The day on which a time stands, on its own clock. */
export function dayOf(time: CalendarTime): DayNumber {
  return time.kind === 'date' ? time.day : Math.floor(time.local / 1440);
}
