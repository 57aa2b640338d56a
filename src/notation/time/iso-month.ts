import { type DayNumber, dayNumber, type IsoDate, parseIsoDate } from './iso-date';

/** A month of ISO 8601, `YYYY-MM`, that exists. Ordinary string comparison sorts it. */
export type IsoMonth = string & { readonly __brand: 'IsoMonth' };

/** The month that holds `date`. */
export function isoMonthOf(date: IsoDate): IsoMonth {
  return date.slice(0, 7) as IsoMonth;
}

/** The month written in `text`, or `undefined` when it is not `YYYY-MM` or no such month exists. */
export function parseIsoMonth(text: string): IsoMonth | undefined {
  return parseIsoDate(`${text}-01`) === undefined ? undefined : (text as IsoMonth);
}

/** The first day of `month`. */
export function firstDateOf(month: IsoMonth): IsoDate {
  return `${month}-01` as IsoDate;
}

/** First and last day of `month`, both included. */
export function daysOfMonth(month: IsoMonth): { readonly first: DayNumber; readonly last: DayNumber } {
  const first = dayNumber(firstDateOf(month));
  // The 32nd day counted from the first lies in the next month, whatever the length of this one.
  const inNext = new Date((first + 31) * 86_400_000).getUTCDate();
  return { first, last: first + 31 - inNext };
}

/**
 * The month `months` months after `month` (before it when negative).
 * @throws RangeError outside the years 0001 to 9999, which the notation cannot write
 */
export function addMonths(month: IsoMonth, months: number): IsoMonth {
  const count = Number(month.slice(0, 4)) * 12 + Number(month.slice(5)) - 1 + months;
  const year = Math.floor(count / 12);
  const text = `${String(year).padStart(4, '0')}-${String(count - 12 * year + 1).padStart(2, '0')}`;
  const found = parseIsoMonth(text);
  if (found === undefined) throw new RangeError(`Month ${text} is outside the years 0001 to 9999.`);
  return found;
}
