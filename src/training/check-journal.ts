import type { Journal } from '../journal/journal';
import type { IsoWeek } from '../notation/time/iso-week';
import { checkGoals } from './check-goals';
import { checkHistory } from './check-history';
import { checkNote } from './check-note';
import { checkWeekIn } from './check-week';
import type { Finding } from './finding';
import { inOrder } from './finding-order';
import { unreadableCalendars } from './unreadable-calendar';
import { type CheckOptions, checkContext } from './week-under-check';
import { weeksOf } from './weeks-of-journal';

/** What {@link checkJournal} looks at; every week that holds something when `weeks` is left out. */
export interface CheckJournalOptions extends CheckOptions {
  readonly weeks?: readonly IsoWeek[];
}

/** Everything that is found in the notes, goals and weeks of a journal, in order of note, place and code. */
export function checkJournal(journal: Journal, options: CheckJournalOptions): readonly Finding[] {
  const context = checkContext(journal, options);
  const weeks = options.weeks ?? weeksOf(journal, options.today);
  return inOrder([
    ...[...journal.notes()].flatMap((note) => checkNote(note, journal)),
    ...unreadableCalendars(journal),
    ...checkGoals(journal, options),
    ...checkHistory(context),
    ...weeks.flatMap((week) => checkWeekIn(context, week)),
  ]);
}
