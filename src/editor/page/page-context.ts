import type { Unit } from '../../notation/quantity';
import type { SourceRange } from '../../notation/source-range';
import { type IsoDate, parseIsoDate } from '../../notation/time/iso-date';
import type { PagePlace } from '../../pages/page-parts';
import type { Message } from '../../training/finding';
import { message } from '../../training/wording';
import type { Words } from '../words';

/** What the page's words are made from. */
export interface PageContext {
  readonly words: Words;
  readonly today: IsoDate;
}

/** A sentence with its values, in the language of `context`. */
export function say(
  { words }: PageContext,
  template: Message['template'],
  ...values: Message['values']
): string {
  return words.say(message(template, ...values));
}

/** `Tuesday, 24 February` with the year when it is not this one. */
export function dayInWords({ words, today }: PageContext, date: IsoDate): string {
  return words.dates.weekdayAndDay(date, today);
}

/** A value with its unit when that is known. */
export function quantityInWords({ words }: PageContext, value: number, unit: Unit | undefined): string {
  return unit === undefined ? words.number(value, 2) : words.quantity(value, unit);
}

/** Characters of a note, as the page names them. */
export function pagePlace(place: { readonly note: string; readonly range: SourceRange }): PagePlace {
  return { note: place.note, range: { start: place.range.start, end: place.range.end } };
}

/** What stands behind a number of this unit. */
export function unitSuffix(unit: Unit | undefined): string {
  if (unit === undefined) return '';
  if (unit === 'deg') return '°';
  return unit === '%' ? '%' : `\u00a0${unit}`;
}

/** A value to two decimals with its unit: changes and errors are smaller than readings. */
export function preciseInWords({ words }: PageContext, value: number, unit: Unit | undefined): string {
  return `${words.number(value, 2)}${unitSuffix(unit).replace('\u00a0', ' ')}`;
}

/** A share of 0..1 in whole percent: `78 %`. */
export function percentInWords({ words }: PageContext, share: number): string {
  return words.quantity(100 * share, '%');
}

/** A message of the training figures, its ISO dates written as days. */
export function sayWithDays(context: PageContext, { template, values }: Message): string {
  const { words, today } = context;
  const written = values.map((value) => {
    const date = typeof value === 'string' ? parseIsoDate(value) : undefined;
    return date ? words.dates.day(date, today) : value;
  });
  return words.say({ template, values: written });
}
