import type { Goal, Journal } from '../../journal/journal';
import type { NotePlace } from '../../journal/note';
import type { Entry, Rating } from '../../notation/entries';
import { type DayNumber, dayNumber, daysBetween, type IsoDate, isoDate } from '../../notation/time/iso-date';
import { isoWeekOf } from '../../notation/time/iso-week';
import { entryPlace } from '../session-place';
import { summariseWeek, type WeekSummary } from '../week-summary';
import type { CheckContext } from '../week-under-check';

/** The last day up to today on which something was logged, and the note in which it stands. */
export interface LastLog {
  readonly date: IsoDate;
  readonly daysAgo: number;
  readonly place: NotePlace;
}

/** Pain that no later line has cleared, as it was noted last. */
export interface OpenPainOfAthlete {
  readonly region: string;
  readonly rating?: Rating;
  readonly date: IsoDate;
  readonly place: NotePlace;
}

/** The nearest day that is written down ahead: that of an event or of a goal. */
export interface NextDate {
  readonly is: 'event' | 'goal';
  readonly name: string;
  readonly date: IsoDate;
  readonly days: number;
  readonly place: NotePlace;
}

/** A goal whose day has passed while its box is still empty. */
export interface GoalPastItsDate {
  readonly goal: string;
  readonly title: string;
  readonly by: IsoDate;
  readonly place: NotePlace;
}

/** What a coach looks for first in the journal of one athlete, findings left out. */
export interface AthleteFacts {
  readonly lastLog?: LastLog;
  readonly week: WeekSummary;
  /** In order of region. */
  readonly pains: readonly OpenPainOfAthlete[];
  readonly next?: NextDate;
  readonly goalsPast: readonly GoalPastItsDate[];
}

/** Whether an entry tells of something that happened, other than a plan. */
function logs(entry: Entry): boolean {
  switch (entry.tag) {
    case 'session':
      return entry.task?.checked === true || entry.skipped !== undefined || entry.moved !== undefined;
    case 'measure':
    case 'sore':
    case 'pain':
    case 'win':
      return true;
    default:
      return false;
  }
}

function lastLog(journal: Journal, today: DayNumber): LastLog | undefined {
  const first = journal.span()?.first ?? today + 1;
  for (let day = today; day >= first; day -= 1) {
    for (const note of journal.notesOf(day)) {
      const entry = note.reading.entries.find(logs);
      if (entry)
        return { date: isoDate(day), daysAgo: today - day, place: entryPlace({ note: note.path, entry }) };
    }
  }
  return undefined;
}

function nextDate({ plan, today }: CheckContext): NextDate | undefined {
  const dates: Omit<NextDate, 'days'>[] = [
    ...plan.events.map((event) => ({
      is: 'event' as const,
      name: event.name,
      date: event.date,
      place: entryPlace(event),
    })),
    ...[...plan.goals.values()].flatMap((goal) =>
      goal.by === undefined || goal.closed
        ? []
        : [{ is: 'goal' as const, name: goal.title, date: goal.by, place: entryPlace(goal) }],
    ),
  ];
  // Of one day the event comes first: sorting keeps the order above.
  const [next] = dates
    .filter(({ date }) => date >= today)
    .sort((one, other) => (one.date === other.date ? 0 : one.date < other.date ? -1 : 1));
  return next && { ...next, days: daysBetween(today, next.date) };
}

function isPast(goal: Goal, today: IsoDate): goal is Goal & { readonly by: IsoDate } {
  return !goal.closed && goal.by !== undefined && goal.by < today;
}

/** The facts of one athlete on the day of `context`. They hold until the journal or the day changes. */
export function athleteFacts(context: CheckContext): AthleteFacts {
  const { journal, plan, today, weeks } = context;
  const last = lastLog(journal, dayNumber(today));
  const next = nextDate(context);
  return {
    ...(last ? { lastLog: last } : {}),
    week: summariseWeek(journal, isoWeekOf(today), today, weeks),
    pains: context.openPains().map((pain) => ({
      region: pain.region,
      ...(pain.rating === undefined ? {} : { rating: pain.rating }),
      date: pain.date,
      place: entryPlace(pain),
    })),
    ...(next ? { next } : {}),
    goalsPast: [...plan.goals.values()].flatMap((goal) =>
      isPast(goal, today) ? [{ goal: goal.id, title: goal.title, by: goal.by, place: entryPlace(goal) }] : [],
    ),
  };
}
