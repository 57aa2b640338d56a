import { type DayNumber, isoWeekday } from '../notation/time/iso-date';
import type { LengthOfTime } from '../notation/time/length-of-time';
import type { Message } from './finding';

const weekdays = ['Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday', 'Sunday'];

/** A sentence with its values. */
export function message(template: string, ...values: readonly (string | number)[]): Message {
  return { template, values };
}

/** The English name of the day's weekday. */
export function weekdayName(day: DayNumber): string {
  return weekdays[isoWeekday(day) - 1] ?? '';
}

/** Minutes in words: `48 h`, `22 h 45 min`, `45 min`; seconds are rounded away. */
export function minutesInWords(minutes: number): string {
  const whole = Math.round(minutes);
  const hours = Math.floor(whole / 60);
  const rest = whole % 60;
  if (hours === 0) return `${rest} min`;
  return rest === 0 ? `${hours} h` : `${hours} h ${rest} min`;
}

/** A length in words, in the unit in which it was written: `7 days`, `48 h`. */
export function lengthInWords(length: LengthOfTime): string {
  if (length.unit !== 'd') return minutesInWords(length.minutes);
  const days = Number((length.minutes / 1440).toFixed(2));
  return days === 1 ? '1 day' : `${days} days`;
}
