import type { BodyReport, Journal, JournalPlan } from '../journal/journal';
import { type DayNumber, dayNumber, type IsoDate } from '../notation/time/iso-date';
import type { IsoWeek } from '../notation/time/iso-week';
import { effectiveRules, type Rule } from './default-rules';
import type { Finding, FindingCode } from './finding';
import type { TimedSession } from './gap';
import { openPains } from './open-pain';
import type { SessionFacts } from './session-facts';
import { type SessionTimes, sessionTimes } from './session-times';
import { standingBetween, type TrainingWeek, type WeekReader, weekReader } from './training-week';

/** The day and the clock for which a journal is checked. */
export interface CheckOptions {
  readonly today: IsoDate;
  /** The time zone (tzdb name) of the clock in the notes. */
  readonly zone: string;
  /** The chance of "still sore" that the athlete accepts, inside 0..1; 0.2 when left out. */
  readonly acceptedChance?: number;
}

/** What the checks of every week of one journal share. */
export interface CheckContext extends CheckOptions {
  readonly journal: Journal;
  readonly plan: JournalPlan;
  readonly todayNumber: DayNumber;
  readonly rules: readonly Rule[];
  readonly weeks: WeekReader;
  /** The session with its times in the zone. */
  timed(facts: SessionFacts): TimedSession;
  /** Pain that is not over today. */
  openPains(): readonly BodyReport[];
}

/** One week, as a rule looks at it. */
export interface WeekUnderCheck extends CheckContext, TrainingWeek {
  readonly sunday: DayNumber;
  /** Whether the week is so far along, or so far written, that what is not there can be called missing. */
  readonly canMiss: boolean;
  /** Standing sessions of the `days` days before Monday, in order of time. */
  before(days: number): readonly SessionFacts[];
}

/** A check of a week for one thing. */
export interface WeekRule {
  readonly code: FindingCode;
  readonly check: (week: WeekUnderCheck) => readonly Finding[];
}

/** What the checks of every week share; it keeps what it has worked out until the journal changes. */
export function checkContext(journal: Journal, options: CheckOptions): CheckContext {
  const { plan } = journal;
  const todayNumber = dayNumber(options.today);
  const times = new Map<SessionFacts, SessionTimes | undefined>();
  let pains: readonly BodyReport[] | undefined;
  return {
    ...options,
    journal,
    plan,
    todayNumber,
    rules: effectiveRules(plan),
    weeks: weekReader(journal, options.today),
    timed(facts) {
      if (!times.has(facts)) times.set(facts, sessionTimes(facts, options.zone));
      return { facts, times: times.get(facts) };
    },
    openPains() {
      pains ??= openPains(journal, todayNumber);
      return pains;
    },
  };
}

/**
 * A past week can miss something when it has a day note, the running week once the journal has begun, a coming
 * week when a session stands in it.
 */
function canMiss(context: CheckContext, week: TrainingWeek): boolean {
  const { journal, todayNumber } = context;
  const { monday } = week;
  if (todayNumber < monday) return week.standing.length > 0;
  if (todayNumber <= monday + 6) {
    const span = journal.span();
    return span !== undefined && span.first <= monday + 6;
  }
  return [0, 1, 2, 3, 4, 5, 6].some((offset) => journal.notesOf(monday + offset).length > 0);
}

/** The week `week`, ready for every rule. */
export function weekUnderCheck(context: CheckContext, week: IsoWeek): WeekUnderCheck {
  const trained = context.weeks(week);
  const { monday } = trained;
  return {
    ...context,
    ...trained,
    sunday: monday + 6,
    canMiss: canMiss(context, trained),
    before(days) {
      const begun = context.journal.span()?.first ?? monday;
      return standingBetween(context.weeks, Math.max(begun, monday - days), monday - 1);
    },
  };
}
