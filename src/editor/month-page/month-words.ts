import type { Weekday } from '../../notation/entries';
import { type DayNumber, dayNumber, type IsoDate, isoDate } from '../../notation/time/iso-date';
import { firstDateOf, type IsoMonth } from '../../notation/time/iso-month';
import type { SessionMark } from '../../training/month/month-facts';
import type { Clauses } from '../../training/month/week-clauses';
import { message } from '../../training/wording';
import { usableLanguage } from '../date-words';
import type { Words } from '../words';

function written(day: DayNumber, language: string, options: Intl.DateTimeFormatOptions): string {
  return new Intl.DateTimeFormat(usableLanguage(language), { ...options, timeZone: 'UTC' }).format(
    new Date(day * 86_400_000),
  );
}

/** `February 2026`. */
export function monthName(month: IsoMonth, language: string): string {
  return written(dayNumber(firstDateOf(month)), language, { month: 'long', year: 'numeric' });
}

/** `24`, or `Mar 1` in a neighbouring month. */
export function dayNumberName(day: DayNumber, isInMonth: boolean, language: string): string {
  return isInMonth
    ? String(Number(isoDate(day).slice(8)))
    : written(day, language, { day: 'numeric', month: 'short' });
}

/** 2024-01-01 was a Monday. */
const anyMonday = dayNumber('2024-01-01' as IsoDate);

/** The seven weekdays from `weekStart` on. */
export function weekdayNames(
  weekStart: Weekday,
  language: string,
): readonly { readonly short: string; readonly long: string }[] {
  return [0, 1, 2, 3, 4, 5, 6].map((offset) => {
    const day = anyMonday + weekStart - 1 + offset;
    return {
      short: written(day, language, { weekday: 'short' }),
      long: written(day, language, { weekday: 'long' }),
    };
  });
}

/** Clauses as one sentence: `2 of 3 flexibility sessions; the third fell to travel`. */
export function clausesInWords(clauses: Clauses, { say }: Words): string {
  const words = clauses.map(say).join('; ');
  return words.slice(0, 1).toLocaleUpperCase() + words.slice(1);
}

/** What each mark means, in the order in which it is explained. */
export function markMeanings({
  say,
}: Words): readonly { readonly mark: SessionMark; readonly words: string }[] {
  return [
    { mark: 'kept', words: say(message('kept')) },
    { mark: 'missed', words: say(message('left out')) },
    { mark: 'excused', words: say(message('left out for a reason from outside, counted apart')) },
    { mark: 'unmarked', words: say(message('past, not marked yet')) },
    { mark: 'moved', words: say(message('moved')) },
    { mark: 'planned', words: say(message('planned')) },
  ];
}
