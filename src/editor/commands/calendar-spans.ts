import { addDays, type IsoDate, isoDate } from '../../notation/time/iso-date';
import { isoWeekOf, mondayOf } from '../../notation/time/iso-week';

/** A span of days to export, both ends included. */
export interface CalendarSpan {
  readonly name: 'this-week' | 'next-week' | 'four-weeks' | 'twelve-weeks';
  readonly first: IsoDate;
  readonly last: IsoDate;
}

/**
 * The spans that are offered on the day `today`: whole weeks, so that an export on any day of a week holds the same
 * sessions. Those of several weeks begin with the running one.
 */
export function calendarSpans(today: IsoDate): readonly CalendarSpan[] {
  const monday = isoDate(mondayOf(isoWeekOf(today)));
  const span = (name: CalendarSpan['name'], from: number, weeks: number): CalendarSpan => ({
    name,
    first: addDays(monday, from * 7),
    last: addDays(monday, (from + weeks) * 7 - 1),
  });
  return [
    span('this-week', 0, 1),
    span('next-week', 1, 1),
    span('four-weeks', 0, 4),
    span('twelve-weeks', 0, 12),
  ];
}
