import { lineStarts } from '../notation/source-range';
import { type BusyCalendar, readBusyCalendar } from './calendar/busy-calendar';
import type { JournalFile, Note, NotePath } from './note';
import { isCalendarPath } from './note-path';
import { openNote } from './open-note';

/** A calendar file that lies in a journal: the times that it takes are no time to train. */
export interface CalendarFile extends JournalFile {
  readonly calendar: BusyCalendar;
}

/** Reads `text` as the calendar file at `path`. Any text is one; what is wrong with it is told of. */
export function openCalendarFile(path: NotePath, text: string): CalendarFile {
  return { path, text, lineStarts: lineStarts(text), calendar: readBusyCalendar(text) };
}

/** Reads `text` as what its path says: a calendar, or a note. */
export function openJournalFile(path: NotePath, text: string): Note | CalendarFile {
  return isCalendarPath(path) ? openCalendarFile(path, text) : openNote(path, text);
}
