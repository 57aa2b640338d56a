import type { Journal } from '../journal/journal';
import { dayNumber, type IsoDate } from '../notation/time/iso-date';
import { type IsoWeek, isoWeekOf } from '../notation/time/iso-week';
import type { SessionFacts } from './session-facts';
import { type WeekReader, weekReader } from './training-week';

/** How far ahead a session is looked for: nobody lays out more than a year. */
const daysAhead = 400;

/**
 * The first session from `today` on that is planned and counts for the goal `goal`, or `undefined` when there is
 * none within the next 400 days.
 * @param weeks The reader that already read the journal, when there is one.
 */
export function nextSession(
  journal: Journal,
  goal: string,
  today: IsoDate,
  weeks: WeekReader = weekReader(journal, today),
): SessionFacts | undefined {
  const first = dayNumber(today);
  const ahead = new Set<IsoWeek>(
    journal.sessions(first, first + daysAhead).map((session) => isoWeekOf(session.date)),
  );
  for (const week of ahead) {
    const found = weeks(week).standing.find(
      (facts) => facts.state === 'planned' && facts.goals.includes(goal),
    );
    if (found) return found;
  }
  return undefined;
}
