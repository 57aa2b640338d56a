import { type IsoDate, parseIsoDate } from '../../src/notation/time/iso-date';
import { type IsoWeek, parseIsoWeek } from '../../src/notation/time/iso-week';

/** The date in `text`. @throws when there is none */
export function date(text: string): IsoDate {
  const parsed = parseIsoDate(text);
  if (parsed === undefined) throw new Error(`${text} is no date`);
  return parsed;
}

/** The week in `text`. @throws when there is none */
export function week(text: string): IsoWeek {
  const parsed = parseIsoWeek(text);
  if (parsed === undefined) throw new Error(`${text} is no week`);
  return parsed;
}
