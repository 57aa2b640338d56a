import type { Journal, JournalPlan, Need, Session } from '../journal/journal';
import { type DayNumber, type IsoDate, isoWeekday } from '../notation/time/iso-date';
import { type IsoWeek, isoWeekOfDay, mondayOf } from '../notation/time/iso-week';
import { assignNeeds } from './need-assignment';
import { openNeeds } from './open-needs';
import { type SessionFacts, sessionFacts } from './session-facts';
import { sessionState, stands } from './session-state';

/** One week of a journal, with all that its sessions say and count for. */
export interface TrainingWeek {
  readonly week: IsoWeek;
  readonly monday: DayNumber;
  /** Every session of the week in order of day and time; timeless ones end their day. */
  readonly sessions: readonly SessionFacts[];
  /** Those that stand: done, planned and overdue. */
  readonly standing: readonly SessionFacts[];
  /** What the week is asked to hold, needs of the nearest goal first. */
  readonly needs: readonly Need[];
}

/** Gives any week of one journal, each put together once. */
export type WeekReader = (week: IsoWeek) => TrainingWeek;

function readWeek(journal: Journal, plan: JournalPlan, week: IsoWeek, today: IsoDate): TrainingWeek {
  const monday = mondayOf(week);
  const sessions = journal.sessions(monday, monday + 6);
  const standing = sessions.filter((session) => stands(sessionState(session, today)));
  const assigned = assignNeeds(standing, plan, week);
  const factsOf = (session: Session): SessionFacts =>
    sessionFacts(session, assigned.get(session) ?? [], plan, today);
  const facts = sessions.map(factsOf);
  return {
    week,
    monday,
    sessions: facts,
    standing: facts.filter((one) => one.stands),
    needs: openNeeds(plan, week),
  };
}

/**
 * A reader of the journal's weeks as they are on the day `today`. It keeps what it has read: make a new one when
 * a note has changed.
 */
export function weekReader(journal: Journal, today: IsoDate): WeekReader {
  const { plan } = journal;
  const read = new Map<IsoWeek, TrainingWeek>();
  return (week) => {
    const known = read.get(week) ?? readWeek(journal, plan, week, today);
    read.set(week, known);
    return known;
  };
}

/** Every session of the days `first` to `last`, standing or not, in order of time. */
export function sessionsBetween(
  weeks: WeekReader,
  first: DayNumber,
  last: DayNumber,
): readonly SessionFacts[] {
  const found: SessionFacts[] = [];
  for (let monday = first - isoWeekday(first) + 1; monday <= last; monday += 7) {
    const { sessions } = weeks(isoWeekOfDay(monday));
    found.push(...sessions.filter(({ session }) => session.day >= first && session.day <= last));
  }
  return found;
}

/** The standing sessions of the days `first` to `last`, in order of time. */
export function standingBetween(
  weeks: WeekReader,
  first: DayNumber,
  last: DayNumber,
): readonly SessionFacts[] {
  return sessionsBetween(weeks, first, last).filter(({ stands }) => stands);
}
