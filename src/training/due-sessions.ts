import type { Journal, Session } from '../journal/journal';
import { dayNumber, type IsoDate } from '../notation/time/iso-date';
import { isoWeekOf } from '../notation/time/iso-week';
import type { SessionFacts } from './session-facts';
import { sessionState } from './session-state';
import { type WeekReader, weekReader } from './training-week';

/** What an athlete has to look at today. */
export interface DueSessions {
  /** Sessions of earlier days of which nothing says what became of them, the latest first. */
  readonly overdue: readonly SessionFacts[];
  /** Sessions of today in order of time, done and skipped ones as well; those moved away left out. */
  readonly today: readonly SessionFacts[];
  /** Sessions that are planned on the days of this week that are still to come. */
  readonly laterThisWeek: readonly SessionFacts[];
}

/** Sessions of earlier days of which nothing says what became of them, in order of day and time. */
export function overdueSessions(journal: Journal, today: IsoDate): readonly Session[] {
  const span = journal.span();
  if (!span) return [];
  return journal
    .openSessions(span.first, dayNumber(today) - 1)
    .filter((session) => sessionState(session, today) === 'overdue');
}

/**
 * What is due on the day `today`.
 * @param weeks The reader that already read the journal, when there is one.
 */
export function dueSessions(
  journal: Journal,
  today: IsoDate,
  weeks: WeekReader = weekReader(journal, today),
): DueSessions {
  const weeksBehind = new Set(overdueSessions(journal, today).map((session) => isoWeekOf(session.date)));
  const overdue = [...weeksBehind].flatMap((week) =>
    weeks(week).sessions.filter((facts) => facts.state === 'overdue'),
  );
  const { sessions } = weeks(isoWeekOf(today));
  return {
    overdue: overdue.reverse(),
    today: sessions.filter((facts) => facts.session.date === today && facts.state !== 'moved'),
    laterThisWeek: sessions.filter((facts) => facts.session.date > today && facts.state === 'planned'),
  };
}
