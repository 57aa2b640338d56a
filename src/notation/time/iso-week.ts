import { type DayNumber, dayNumber, type IsoDate, isoDate, isoWeekday, parseIsoDate } from './iso-date';

/** A week of ISO 8601, `YYYY-Www`, that exists. Ordinary string comparison sorts it. */
export type IsoWeek = string & { readonly __brand: 'IsoWeek' };

/** The week that holds `day`: weeks begin on Monday and belong to the year of their Thursday. */
export function isoWeekOfDay(day: DayNumber): IsoWeek {
  const thursday = day - isoWeekday(day) + 4;
  const year = isoDate(thursday).slice(0, 4);
  const firstDayOfYear = dayNumber(`${year}-01-01` as IsoDate);
  const number = Math.floor((thursday - firstDayOfYear) / 7) + 1;
  return `${year}-W${String(number).padStart(2, '0')}` as IsoWeek;
}

/** The week that holds `date`. */
export function isoWeekOf(date: IsoDate): IsoWeek {
  return isoWeekOfDay(dayNumber(date));
}

/** The Monday of `week`. Week 1 is the week with 4 January in it. */
export function mondayOf(week: IsoWeek): DayNumber {
  const fourthOfJanuary = dayNumber(`${week.slice(0, 4)}-01-04` as IsoDate);
  return fourthOfJanuary - isoWeekday(fourthOfJanuary) + 1 + (Number(week.slice(6)) - 1) * 7;
}

/** The seven days of `week`, Monday first. */
export function daysOfWeek(week: IsoWeek): readonly DayNumber[] {
  const monday = mondayOf(week);
  return [0, 1, 2, 3, 4, 5, 6].map((offset) => monday + offset);
}

/** The week `weeks` weeks after `week`. */
export function addWeeks(week: IsoWeek, weeks: number): IsoWeek {
  return isoWeekOfDay(mondayOf(week) + weeks * 7);
}

/** `count` weeks in a row, `first` the first of them. */
export function weeksInRow(first: IsoWeek, count: number): readonly IsoWeek[] {
  return Array.from({ length: count }, (_, index) => addWeeks(first, index));
}

/** The week written in `text`, or `undefined` when it is not `YYYY-Www` or its year has no such week. */
export function parseIsoWeek(text: string): IsoWeek | undefined {
  const match = /^(\d{4})-W(\d{2})$/.exec(text);
  if (!match || Number(match[2]) === 0 || parseIsoDate(`${match[1]}-01-04`) === undefined) return undefined;
  const week = text as IsoWeek;
  return isoWeekOfDay(mondayOf(week)) === week ? week : undefined;
}
