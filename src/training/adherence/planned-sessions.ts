import type { DayNumber } from '../../notation/time/iso-date';
import { isoWeekOfDay, mondayOf } from '../../notation/time/iso-week';
import type { SessionFacts } from '../session-facts';
import type { WeekReader } from '../training-week';

/** What became of a session that was planned for a past day. */
export type Outcome =
  | 'done'
  /** Skipped for a reason that is the athlete's own: sore, tired, other, a word of their own. */
  | 'missed'
  /** Skipped for a reason from outside: ill, injured, work, travel. Shown apart, never counted against anybody. */
  | 'excused'
  /** Nothing says what became of it: counted as missed. */
  | 'unmarked';

/** A past planned session with what became of it. */
export interface PlannedSession {
  readonly facts: SessionFacts;
  readonly day: DayNumber;
  readonly outcome: Outcome;
  /** Why it was skipped, as written. */
  readonly reason?: string;
}

/** Reasons that leave a session out of the count, as a plan that was called off is no plan. Common practice, no source. */
export const excusedReasons: readonly string[] = ['ill', 'injured', 'work', 'travel'];

function outcomeOf(facts: SessionFacts): Outcome | undefined {
  const reason = facts.session.entry.skipped?.value;
  switch (facts.state) {
    case 'done':
      return 'done';
    case 'skipped':
      return reason !== undefined && excusedReasons.includes(reason) ? 'excused' : 'missed';
    case 'overdue':
      return 'unmarked';
    default:
      // What is still planned has no outcome yet, and what was moved is counted where it went.
      return undefined;
  }
}

/**
 * The planned sessions of the days `first` to `last` and what became of them, in order of day and time. Give a `last`
 * before today: a session of today is not missed yet.
 */
export function plannedSessions(
  weeks: WeekReader,
  first: DayNumber,
  last: DayNumber,
): readonly PlannedSession[] {
  const found: PlannedSession[] = [];
  for (let week = isoWeekOfDay(first); mondayOf(week) <= last; week = isoWeekOfDay(mondayOf(week) + 7)) {
    for (const facts of weeks(week).sessions) {
      const { day, entry } = facts.session;
      const outcome = day < first || day > last ? undefined : outcomeOf(facts);
      if (outcome === undefined) continue;
      const reason = facts.state === 'skipped' ? entry.skipped?.value : undefined;
      found.push({ facts, day, outcome, ...(reason === undefined ? {} : { reason }) });
    }
  }
  return found;
}
