import { type DayNumber, dayNumber, type IsoDate, isoDate, isoWeekday } from '../../notation/time/iso-date';

/** Days to mark on an axis, and whether they are the first days of months. */
export interface DayTicks {
  readonly days: readonly DayNumber[];
  readonly every: 'week' | 'month';
}

const monthSteps = [1, 2, 3, 6, 12, 24, 60, 120] as const;

function mondays(first: DayNumber, last: DayNumber, step: number): readonly DayNumber[] {
  const days: DayNumber[] = [];
  const start = first + ((8 - isoWeekday(first)) % 7);
  for (let day = start; day <= last; day += 7 * step) days.push(day);
  return days;
}

function firstsOfMonths(first: DayNumber, last: DayNumber, step: number): readonly DayNumber[] {
  const days: DayNumber[] = [];
  let year = Number(isoDate(first).slice(0, 4));
  let month = 0;
  for (;;) {
    const date = `${String(year).padStart(4, '0')}-${String(month + 1).padStart(2, '0')}-01` as IsoDate;
    const day = dayNumber(date);
    if (day > last) return days;
    if (day >= first) days.push(day);
    month += step;
    year += Math.floor(month / 12);
    month %= 12;
  }
}

/**
 * Days to mark between `first` and `last`, at most `most` of them: Mondays while they fit, else first days of months
 * that divide the year evenly.
 */
export function dayTicks(first: DayNumber, last: DayNumber, most: number): DayTicks {
  for (const step of [1, 2]) {
    const days = mondays(first, last, step);
    if (days.length <= most) return { days, every: 'week' };
  }
  for (const step of monthSteps) {
    const days = firstsOfMonths(first, last, step);
    if (days.length <= most) return { days, every: 'month' };
  }
  return { days: [], every: 'month' };
}

/** The words for marked days: `24 Feb`, or `Mar` with the year where a year begins. */
export function tickLabels(ticks: DayTicks, locale: string): readonly string[] {
  const form = (options: Intl.DateTimeFormatOptions): Intl.DateTimeFormat =>
    new Intl.DateTimeFormat(locale, { ...options, timeZone: 'UTC' });
  const short = form({ day: 'numeric', month: 'short' });
  const month = form({ month: 'short' });
  const monthAndYear = form({ month: 'short', year: 'numeric' });
  return ticks.days.map((day, index) => {
    if (ticks.every === 'week') return short.format(day * 86_400_000);
    const isNewYear = index === 0 || isoDate(day).slice(5, 7) === '01';
    return (isNewYear ? monthAndYear : month).format(day * 86_400_000);
  });
}
