import type { Unit } from '../../notation/quantity';
import type { SourceRange } from '../../notation/source-range';
import type { IsoDate } from '../../notation/time/iso-date';
import type { PagePlace } from '../../pages/goal-page-data';
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
