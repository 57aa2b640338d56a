import { daysBetween, type IsoDate } from '../notation/time/iso-date';

/** Calendar dates in the words of one language. */
export interface DateWords {
  /** `Tuesday`. */
  weekday(date: IsoDate): string;
  /** `Tue`. */
  weekdayShort(date: IsoDate): string;
  /** `February 24`, with the year when it is not the year of `today`. */
  day(date: IsoDate, today: IsoDate): string;
  /** `Tuesday, February 24`, with the year when it is not the year of `today`. */
  weekdayAndDay(date: IsoDate, today: IsoDate): string;
  /** `Tue, Feb 24`. */
  short(date: IsoDate): string;
  /** The shortest that cannot be mistaken: the weekday within six days of `today`, else the day. */
  near(date: IsoDate, today: IsoDate): string;
}

/** `language` when dates and numbers can be written in it, else English. */
export function usableLanguage(language: string): string {
  try {
    return Intl.getCanonicalLocales(language)[0] ?? 'en';
  } catch {
    return 'en';
  }
}

/**
 * Writes dates as `language` does.
 * @param language a BCP 47 tag, such as the editor's display language
 */
export function dateWords(language: string): DateWords {
  const locale = usableLanguage(language);
  const formats = new Map<string, Intl.DateTimeFormat>();
  const write = (date: IsoDate, options: Intl.DateTimeFormatOptions): string => {
    const key = JSON.stringify(options);
    const format = formats.get(key) ?? new Intl.DateTimeFormat(locale, { ...options, timeZone: 'UTC' });
    formats.set(key, format);
    return format.format(new Date(`${date}T00:00:00Z`));
  };
  const dayOptions = (date: IsoDate, today: IsoDate): Intl.DateTimeFormatOptions => ({
    day: 'numeric',
    month: 'long',
    ...(date.slice(0, 4) === today.slice(0, 4) ? {} : { year: 'numeric' }),
  });
  const weekday = (date: IsoDate) => write(date, { weekday: 'long' });
  const day = (date: IsoDate, today: IsoDate) => write(date, dayOptions(date, today));
  return {
    weekday,
    weekdayShort: (date) => write(date, { weekday: 'short' }),
    day,
    weekdayAndDay: (date, today) => write(date, { weekday: 'long', ...dayOptions(date, today) }),
    short: (date) => write(date, { weekday: 'short', day: 'numeric', month: 'short' }),
    near: (date, today) => (Math.abs(daysBetween(today, date)) <= 6 ? weekday(date) : day(date, today)),
  };
}
