import type { CalendarProblem, CalendarProblemReason } from '../journal/calendar/calendar-problem';
import type { CalendarFile } from '../journal/calendar-file';
import type { Journal } from '../journal/journal';
import type { Finding, Message } from './finding';
import { message } from './wording';

/** What is wrong, what becomes of it, and what would mend it; the word in question is the first value. */
const sentences: Readonly<Record<CalendarProblemReason, string>> = {
  'not-a-calendar': 'This file is not a calendar; export it again as an iCalendar file (.ics)',
  'unreadable-line': 'This line cannot be read and does not count; export the calendar again',
  'not-ended': '{0} begins here and does not end; what stands in it still counts',
  'not-begun': '{0} ends here and has not begun; everything else still counts',
  outside: 'This line stands outside of the calendar and does not count',
  'missing-start': 'This event has no DTSTART and takes no time',
  'unreadable-time': '{0} is not a date or a time of a calendar; what it stands for does not count',
  'unreadable-length': '{0} is not a length of time; the event takes no time',
  'unreadable-rule': '{0} is not a rule that can be followed; the event counts without its repetitions',
  'ends-before-start': 'This event ends before it starts and takes no time',
  'unreadable-zone':
    'The time zone {0} is described incompletely; its name is used, if this machine knows it',
  'unknown-zone': 'The time zone {0} is not known here; its times are read on the clock of the journal',
};

function sentence({ reason, text }: CalendarProblem): Message {
  const template = sentences[reason];
  return template.includes('{0}') ? message(template, text) : message(template);
}

function findingsIn({ path, calendar }: CalendarFile): readonly Finding[] {
  return calendar.problems.map((problem) => ({
    code: 'unreadable-calendar',
    severity: 'warning',
    note: path,
    range: problem.range,
    message: sentence(problem),
    facts: { reason: problem.reason, text: problem.text },
    related: [],
    remedies: [],
  }));
}

/** Something in a calendar file of the journal cannot be used. It stands on the line; all other events still count. */
export function unreadableCalendars(journal: Journal): readonly Finding[] {
  return journal.plan.calendars.flatMap(findingsIn);
}
