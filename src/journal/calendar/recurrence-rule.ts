import { present } from '../../notation/present';
import { type CalendarTime, readCalendarTime } from './calendar-time';

/** The smallest first: a rule's parts for longer times choose, those for shorter ones multiply. */
export const frequencies = [
  'SECONDLY',
  'MINUTELY',
  'HOURLY',
  'DAILY',
  'WEEKLY',
  'MONTHLY',
  'YEARLY',
] as const;

export type Frequency = (typeof frequencies)[number];

/** A weekday, or the `ordinal`-th of its month or year, from the end when negative. */
export interface OrdinalWeekday {
  /** Monday 1 to Sunday 7. */
  readonly weekday: number;
  readonly ordinal?: number;
}

/** A recurrence rule of RFC 5545, section 3.3.10. */
export interface RecurrenceRule {
  readonly frequency: Frequency;
  /** 1 or more. */
  readonly interval: number;
  readonly count?: number;
  readonly until?: CalendarTime;
  /** Monday 1 to Sunday 7. */
  readonly weekStart: number;
  readonly months?: readonly number[];
  readonly weeks?: readonly number[];
  readonly yearDays?: readonly number[];
  readonly monthDays?: readonly number[];
  readonly weekdays?: readonly OrdinalWeekday[];
  readonly hours?: readonly number[];
  readonly minutes?: readonly number[];
  readonly seconds?: readonly number[];
  readonly positions?: readonly number[];
}

const weekdayNames = ['MO', 'TU', 'WE', 'TH', 'FR', 'SA', 'SU'];

class UnreadableRule extends Error {}

function wholeNumber(text: string, lowest: number, highest: number): number {
  const number = /^[+-]?\d+$/.test(text) ? Number(text) : Number.NaN;
  if (!(number >= lowest && number <= highest)) throw new UnreadableRule(text);
  return number;
}

function numbers(text: string, lowest: number, highest: number): readonly number[] {
  return text.split(',').map((one) => wholeNumber(one, lowest, highest));
}

/** Numbers that count from the end when negative; zero is none of them. */
function ordinals(text: string, highest: number): readonly number[] {
  const found = numbers(text, -highest, highest);
  if (found.includes(0)) throw new UnreadableRule(text);
  return found;
}

function weekdayOf(name: string): number {
  const index = weekdayNames.indexOf(name);
  if (index < 0) throw new UnreadableRule(name);
  return index + 1;
}

function ordinalWeekday(text: string): OrdinalWeekday {
  const [, ordinal, name = ''] = /^([+-]?\d{1,2})?([A-Z]{2})$/.exec(text) ?? [];
  const weekday = weekdayOf(name);
  return ordinal === undefined ? { weekday } : { weekday, ordinal: ordinals(ordinal, 53)[0] ?? 1 };
}

type RuleParts = { -readonly [Part in keyof RecurrenceRule]?: RecurrenceRule[Part] };

const readers: Readonly<Record<string, (text: string, parts: RuleParts) => void>> = {
  FREQ(text, parts) {
    const frequency = frequencies.find((one) => one === text);
    if (frequency === undefined) throw new UnreadableRule(text);
    parts.frequency = frequency;
  },
  INTERVAL(text, parts) {
    parts.interval = wholeNumber(text, 1, 1e6);
  },
  COUNT(text, parts) {
    parts.count = wholeNumber(text, 1, 1e9);
  },
  UNTIL(text, parts) {
    const until = readCalendarTime(text, undefined);
    if (until === undefined) throw new UnreadableRule(text);
    parts.until = until;
  },
  WKST(text, parts) {
    parts.weekStart = weekdayOf(text);
  },
  BYMONTH(text, parts) {
    parts.months = numbers(text, 1, 12);
  },
  BYWEEKNO(text, parts) {
    parts.weeks = ordinals(text, 53);
  },
  BYYEARDAY(text, parts) {
    parts.yearDays = ordinals(text, 366);
  },
  BYMONTHDAY(text, parts) {
    parts.monthDays = ordinals(text, 31);
  },
  BYDAY(text, parts) {
    parts.weekdays = text.split(',').map(ordinalWeekday);
  },
  BYHOUR(text, parts) {
    parts.hours = numbers(text, 0, 23);
  },
  BYMINUTE(text, parts) {
    parts.minutes = numbers(text, 0, 59);
  },
  BYSECOND(text, parts) {
    parts.seconds = numbers(text, 0, 60);
  },
  BYSETPOS(text, parts) {
    parts.positions = ordinals(text, 366);
  },
  // RFC 7529; the Gregorian calendar is the one that is meant without it.
  RSCALE(text) {
    if (text !== 'GREGORIAN') throw new UnreadableRule(text);
  },
  SKIP(text) {
    if (text !== 'OMIT') throw new UnreadableRule(text);
  },
};

/** Whether the parts go with the frequency as the table of section 3.3.10 says, and this program can count them. */
function fitsTogether({
  frequency,
  weeks,
  yearDays,
  monthDays,
  weekdays,
  positions,
}: RecurrenceRule): boolean {
  const isYearly = frequency === 'YEARLY';
  const isWithinDay = frequencies.indexOf(frequency) < frequencies.indexOf('DAILY');
  if (weeks && !isYearly) return false;
  if (yearDays && !isYearly && !isWithinDay) return false;
  if (monthDays && frequency === 'WEEKLY') return false;
  // The n-th of an hour's or minute's occurrences: nothing that a person keeps.
  if (positions && isWithinDay) return false;
  const hasOrdinals = weekdays?.some(({ ordinal }) => ordinal !== undefined) === true;
  return !hasOrdinals || frequency === 'MONTHLY' || (isYearly && !weeks);
}

/** Reads a rule such as `FREQ=WEEKLY;BYDAY=TU,TH`; `undefined` when it is none, or not one that can be followed. */
export function readRecurrenceRule(text: string): RecurrenceRule | undefined {
  const parts: RuleParts = {};
  try {
    for (const part of text.trim().toUpperCase().split(';')) {
      const [, name = '', value = ''] = /^([A-Z-]+)=(.+)$/.exec(part) ?? [];
      // A rule may end with a semicolon too many.
      if (part === '') continue;
      const read = readers[name];
      if (!read) return undefined;
      read(value, parts);
    }
  } catch (error) {
    if (error instanceof UnreadableRule) return undefined;
    throw error;
  }
  const { frequency, interval = 1, weekStart = 1, ...others } = parts;
  if (frequency === undefined) return undefined;
  const rule: RecurrenceRule = { frequency, interval, weekStart, ...present(others) };
  return fitsTogether(rule) ? rule : undefined;
}
