import type { Journal } from '../journal/journal';
import { addWeeks, type IsoWeek, isoWeekOf } from '../notation/time/iso-week';
import type { CheckOptions } from '../training/week-under-check';
import type { NoteChange } from './note-change';
import { type LeftOutSession, type PlannedSession, planWeeks } from './plan-weeks';

/** A week's notes, ready to be shown and written. */
export interface NextWeek {
  readonly week: IsoWeek;
  /** In order of day and time. */
  readonly placed: readonly PlannedSession[];
  readonly leftOut: readonly LeftOutSession[];
  readonly changes: readonly NoteChange[];
}

/** The day, the clock, and the week to write: the one after that of `today` when left out. */
export interface NextWeekOptions extends CheckOptions {
  readonly week?: IsoWeek;
}

/** One week of {@link planWeeks}, without an explanation of what does not fit. */
export function planNextWeek(journal: Journal, options: NextWeekOptions): NextWeek {
  const { today, zone } = options;
  const week = options.week ?? addWeeks(isoWeekOf(today), 1);
  const { placed, leftOut, changes } = planWeeks(journal, { today, zone, weeks: [week], explain: false });
  return { week, placed, leftOut, changes };
}
