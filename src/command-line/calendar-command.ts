import { baseName } from '../journal/note-path';
import type { InstantMinutes } from '../notation/time/zoned-time';
import { journalCalendarId } from '../planning/calendar/event-identity';
import { exportCalendar } from '../planning/calendar/export-calendar';
import { contentsOf } from '../planning/calendar/previous-export';
import type { CalendarOptions } from './parse-arguments';
import { type JournalsToRead, severalJournals } from './read-journals';

/** What the machine knows beside the notes. */
export interface CalendarSurroundings {
  readonly now: InstantMinutes;
  /** Name of a folder of this machine, also of `.` and `..`. */
  folderName(folder: string): string;
  /** Text of a file of this machine, or `undefined` when it cannot be read. */
  readFile(path: string): string | undefined;
}

/** The file to print, or why there is none. */
export type CalendarAnswer = { readonly text: string } | { readonly refusal: string };

/** The sessions of one journal as an iCalendar file. */
export function calendarAnswer(
  options: CalendarOptions,
  { journals }: JournalsToRead,
  surroundings: CalendarSurroundings,
): CalendarAnswer {
  const [only, another] = journals;
  if (!only || another) {
    return { refusal: `A calendar is of one journal, and ${severalJournals(options.folder, journals)}.` };
  }
  const { journal, zone, today } = only;
  const folder = journal.root === '' ? surroundings.folderName(options.folder) : baseName(journal.root);
  const journalId = journalCalendarId(journal, folder);
  const previous = options.previous === undefined ? undefined : surroundings.readFile(options.previous);
  if (options.previous !== undefined) {
    if (previous === undefined) return { refusal: `"${options.previous}" cannot be read.` };
    const contents = contentsOf(previous, journalId);
    if (contents !== 'this-journal' && contents !== 'nothing') {
      return { refusal: `"${options.previous}" was not exported from this journal.` };
    }
  }
  const { from: first, to: last, alarmMinutes, review } = options;
  return {
    text: exportCalendar(journal, {
      first,
      last,
      today,
      zone,
      journalId,
      stamp: Math.floor(surroundings.now),
      ...(alarmMinutes === undefined ? {} : { alarmMinutes }),
      ...(review === undefined ? {} : { review }),
      ...(previous === undefined ? {} : { previous }),
    }),
  };
}
