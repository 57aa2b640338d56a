/** A calendar date of ISO 8601, `YYYY-MM-DD`, that exists. Ordinary string comparison sorts it. */
export type IsoDate = string & { readonly __brand: 'IsoDate' };

/** Whole days since 1970-01-01, counted on the calendar and therefore free of any time zone. */
export type DayNumber = number;

const shape = /^(\d{4})-(\d{2})-(\d{2})$/;
const millisecondsADay = 86_400_000;

/** Whether `text` has the shape of a date, existing or not (`2026-02-30` has it). */
export function looksLikeIsoDate(text: string): boolean {
  return shape.test(text);
}

/**
 * The date written in `text`, or `undefined` when it is not `YYYY-MM-DD` or does not exist. The year 0000 is left
 * out: its first days lie in a week of the year before, which cannot be written.
 */
export function parseIsoDate(text: string): IsoDate | undefined {
  const match = shape.exec(text);
  if (!match || match[1] === '0000') return undefined;
  const date = new Date(0);
  date.setUTCFullYear(Number(match[1]), Number(match[2]) - 1, Number(match[3]));
  return date.toISOString().slice(0, 10) === text ? (text as IsoDate) : undefined;
}

/** Days from 1970-01-01 to `date`. */
export function dayNumber(date: IsoDate): DayNumber {
  const year = Number(date.slice(0, 4));
  const time = new Date(0).setUTCFullYear(year, Number(date.slice(5, 7)) - 1, Number(date.slice(8, 10)));
  return Math.round(time / millisecondsADay);
}

/**
 * The date `day` days after 1970-01-01.
 * @throws RangeError outside the years 0000 to 9999, which the notation cannot write.
 */
export function isoDate(day: DayNumber): IsoDate {
  const text = new Date(day * millisecondsADay).toISOString();
  if (text.length !== 24) throw new RangeError(`Day ${day} is outside the years 0000 to 9999.`);
  return text.slice(0, 10) as IsoDate;
}

/** The date `days` days after `date` (before it when negative). */
export function addDays(date: IsoDate, days: number): IsoDate {
  return isoDate(dayNumber(date) + days);
}

/** Whole days from `from` to `to`; negative when `to` is earlier. */
export function daysBetween(from: IsoDate, to: IsoDate): number {
  return dayNumber(to) - dayNumber(from);
}

/** Day of the week as ISO 8601 counts it: Monday 1 to Sunday 7. */
export function isoWeekday(day: DayNumber): number {
  return ((((day + 3) % 7) + 7) % 7) + 1;
}
