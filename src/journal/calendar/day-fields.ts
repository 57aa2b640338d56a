import type { DayNumber } from '../../notation/time/iso-date';
import { isoWeekday } from '../../notation/time/iso-date';

/** A day with what recurrence rules ask of it. */
export interface DayFields {
  readonly day: DayNumber;
  readonly year: number;
  /** 1 to 12. */
  readonly month: number;
  readonly monthDay: number;
  readonly monthLength: number;
  readonly yearDay: number;
  readonly yearLength: number;
  /** Monday 1 to Sunday 7. */
  readonly weekday: number;
}

/** 1 January of a year; `Date.UTC` would take the years 0 to 99 for the 1900s. */
export function yearStart(year: number): DayNumber {
  return Math.round(new Date(0).setUTCFullYear(year, 0, 1) / 86_400_000);
}

/** The fields of the days `first` to `last`, both included. */
export function dayFields(first: DayNumber, last: DayNumber): readonly DayFields[] {
  const fields: DayFields[] = [];
  const date = new Date(first * 86_400_000);
  let year = date.getUTCFullYear();
  let month = date.getUTCMonth() + 1;
  let monthDay = date.getUTCDate();
  let start = yearStart(year);
  let yearLength = yearStart(year + 1) - start;
  let monthLength = lengthOfMonth(month, yearLength);
  for (let day = first; day <= last; day += 1) {
    fields.push({
      day,
      year,
      month,
      monthDay,
      monthLength,
      yearDay: day - start + 1,
      yearLength,
      weekday: isoWeekday(day),
    });
    monthDay += 1;
    if (monthDay <= monthLength) continue;
    monthDay = 1;
    month = month === 12 ? 1 : month + 1;
    if (month === 1) {
      year += 1;
      start = day + 1;
      yearLength = yearStart(year + 1) - start;
    }
    monthLength = lengthOfMonth(month, yearLength);
  }
  return fields;
}

function lengthOfMonth(month: number, yearLength: number): number {
  if (month === 2) return yearLength - 337;
  return month === 4 || month === 6 || month === 9 || month === 11 ? 30 : 31;
}

/**
 * The number of a day's week and how many weeks that week's year has. Weeks begin on `weekStart`; the first of a
 * year is the one with at least four of its days in it.
 */
export function weekNumber(
  { day, year, weekday }: DayFields,
  weekStart: number,
): { readonly week: number; readonly weeks: number } {
  const middle = day - ((weekday - weekStart + 7) % 7) + 3;
  // The middle day of a week lies in the year to which the week belongs.
  const own = middle < yearStart(year) ? year - 1 : middle >= yearStart(year + 1) ? year + 1 : year;
  const firstMiddle = (start: DayNumber) => start + ((weekStart + 3 - isoWeekday(start) + 7) % 7);
  const week = (middle - firstMiddle(yearStart(own))) / 7 + 1;
  const weeks = (firstMiddle(yearStart(own + 1)) - firstMiddle(yearStart(own))) / 7;
  return { week, weeks };
}
