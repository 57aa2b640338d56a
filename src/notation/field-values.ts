import type { DateRange, PerWeek, Rating, Side, Weekday } from './entries';
import type { UnreadableReason } from './notation-problem';
import { type Quantity, readQuantity } from './quantity';
import { type IsoDate, parseIsoDate } from './time/iso-date';
import { type LengthOfTime, readLength } from './time/length-of-time';
import { readTimeSpan, type TimeSpan } from './time/wall-clock';
import { weekdayNames } from './time/weekday-names';
import { isKnownZone } from './time/zoned-time';

/** One kind of value: how it is read, and what to say when it cannot be. */
export interface ValueKind<T> {
  readonly read: (text: string) => T | undefined;
  readonly reason: UnreadableReason;
  /** Examples for the message. */
  readonly examples: readonly string[];
}

function readWeekday(text: string): Weekday | undefined {
  const lower = text.toLowerCase();
  const index = weekdayNames.findIndex((name) => name === lower || name.slice(0, 3) === lower);
  return index < 0 ? undefined : ((index + 1) as Weekday);
}

function readRating(text: string): Rating | undefined {
  const match = /^(\d{1,2}(?:[.,]\d+)?)\/10$/.exec(text);
  const rating = Number(match?.[1]?.replace(',', '.'));
  return match && rating <= 10 ? rating : undefined;
}

function readPerWeek(text: string): PerWeek | undefined {
  const [amount = '', period, ...more] = text.split('/');
  if (period !== 'week' || more.length > 0) return undefined;
  if (/^\d{1,3}$/.test(amount)) return { count: Number(amount) };
  const length = readLength(amount);
  return length && { minutes: length.minutes };
}

function readDateRange(text: string): DateRange | undefined {
  const [first = '', last = first, ...more] = text.split('..');
  const from = parseIsoDate(first);
  const to = parseIsoDate(last);
  return from && to && from <= to && more.length === 0 ? { first: from, last: to } : undefined;
}

/** Letters, digits and hyphens of any script, as ids, kinds, regions and names are written. */
export function isWord(text: string): boolean {
  return /^[\p{L}\p{N}][\p{L}\p{M}\p{N}-]*$/u.test(text);
}

/** A number with letters close behind it, such as `75min` or `9.5cn`: never taken for a word. */
export function looksLikeNumber(text: string): boolean {
  return /^[-+−]?\d+(?:[.,]\d+)?(?:\p{L}*|%|°)$/u.test(text);
}

export const wordValue: ValueKind<string> = {
  read: (text) => (isWord(text) ? text : undefined),
  reason: 'not-a-word',
  examples: ['low-split'],
};

/** A person's or a place's name: a word, or several in quotation marks. */
export const nameValue: ValueKind<string> = {
  read: (text) => (/^[\p{L}\p{N}][\p{L}\p{M}\p{N} .'’-]*$/u.test(text) ? text : undefined),
  reason: 'not-a-word',
  examples: ['coach', '"old gym"'],
};

export const dateValue: ValueKind<IsoDate> = {
  read: parseIsoDate,
  reason: 'not-a-date',
  examples: ['2026-06-14'],
};

export const dateRangeValue: ValueKind<DateRange> = {
  read: readDateRange,
  reason: 'not-a-date',
  examples: ['2026-03-07', '2026-03-07..2026-03-10'],
};

export const timeValue: ValueKind<TimeSpan> = {
  read: readTimeSpan,
  reason: 'not-a-time',
  examples: ['18:30', '18:30-19:45'],
};

export const lengthValue: ValueKind<LengthOfTime> = {
  read: readLength,
  reason: 'not-a-length',
  examples: ['75min', '1h15', '48h', '7d'],
};

export const quantityValue: ValueKind<Quantity> = {
  read: readQuantity,
  reason: 'not-a-quantity',
  examples: ['9.5cm', '142deg', '20s', '12reps', '40kg', '3/5'],
};

export const ratingValue: ValueKind<Rating> = {
  read: readRating,
  reason: 'not-a-rating',
  examples: ['7/10'],
};

export const perWeekValue: ValueKind<PerWeek> = {
  read: readPerWeek,
  reason: 'not-per-week',
  examples: ['2/week', '300min/week'],
};

export const weekdayValue: ValueKind<Weekday> = {
  read: readWeekday,
  reason: 'not-a-weekday',
  examples: ['monday', 'mon'],
};

export const zoneValue: ValueKind<string> = {
  read: (text) => (isKnownZone(text) ? text : undefined),
  reason: 'not-a-zone',
  examples: ['Europe/Lisbon'],
};

export const sideValue: ValueKind<Side> = {
  read: (text) => (text === 'left' || text === 'right' ? text : undefined),
  reason: 'not-a-side',
  examples: ['left', 'right'],
};

/** Any characters at all, such as a path or words in quotes. */
export const freeValue: ValueKind<string> = {
  read: (text) => text,
  reason: 'empty-value',
  examples: ['"words"'],
};
