import type { Journal } from '../journal/journal';
import type { IsoDate } from '../notation/time/iso-date';
import { type IsoWeek, isoWeekOf } from '../notation/time/iso-week';

/**
 * Every week in which a journal holds something, in order: weeks with day notes, weeks to which a session was
 * moved, and the week of `today`. A date that was mistyped adds its own week and no more.
 */
export function weeksOf(journal: Journal, today: IsoDate): readonly IsoWeek[] {
  const weeks = new Set([isoWeekOf(today)]);
  for (const note of journal.notes()) {
    if (note.name.kind !== 'day') continue;
    weeks.add(isoWeekOf(note.name.date));
    for (const entry of note.reading.entries) {
      if (entry.tag === 'session' && entry.moved) weeks.add(isoWeekOf(entry.moved.value));
    }
  }
  return [...weeks].sort();
}
