import type { JournalEvent } from '../../journal/journal';
import type { NotePath } from '../../journal/note';
import type { Weekday } from '../../notation/entries';
import { type DayNumber, dayNumber, type IsoDate, isoDate, isoWeekday } from '../../notation/time/iso-date';
import { daysOfMonth, type IsoMonth } from '../../notation/time/iso-month';
import { adherenceFigures } from '../adherence/adherence-figures';
import type { AdherenceShare } from '../adherence/adherence-share';
import { type PlannedSession, plannedSessions } from '../adherence/planned-sessions';
import { isDayTaken } from '../open-days';
import type { SessionFacts } from '../session-facts';
import { sessionsBetween } from '../training-week';
import { totalMinutes } from '../week-summary';
import type { CheckContext } from '../week-under-check';

/** What a day of a month shows of a session. */
export type SessionMark =
  | 'kept'
  /** Skipped for a reason that is the athlete's own. */
  | 'missed'
  /** Skipped for a reason from outside: counted apart. */
  | 'excused'
  /** Past, and nothing says what became of it. */
  | 'unmarked'
  | 'moved'
  | 'planned';

/** A session as it stands in a month. */
export interface MonthSession {
  readonly facts: SessionFacts;
  readonly mark: SessionMark;
  /** Why it was skipped, as written. */
  readonly reason?: string;
  /** The day to which it was moved. */
  readonly movedTo?: IsoDate;
}

/** A day of a month. */
export interface MonthDay {
  readonly day: DayNumber;
  readonly date: IsoDate;
  /** Days of the months before and after stand in the first and the last week. */
  readonly isInMonth: boolean;
  readonly when: 'past' | 'today' | 'ahead';
  /** In order of time; those without a time end the day. */
  readonly sessions: readonly MonthSession[];
  /** Its first note, when there is one. */
  readonly note?: NotePath;
  /** A `#busy` line or a calendar takes the whole day. */
  readonly isBusy: boolean;
  readonly events: readonly JournalEvent[];
  /** A past day, since the journal's first one, on which nothing but recovery stands. */
  readonly isRest: boolean;
}

/** How many sessions of a kind were planned for past days, and what became of them. */
export interface KindCount {
  readonly kind: string;
  /** Excused ones too. */
  readonly planned: number;
  readonly done: number;
}

/** Seven days of a month, and what became of their sessions. */
export interface MonthWeek {
  readonly first: IsoDate;
  readonly days: readonly MonthDay[];
  /** Planned sessions up to today that are done, missed, excused or not marked. */
  readonly past: readonly PlannedSession[];
  readonly done: number;
  readonly minutesDone: number;
  /** Sessions still to come. */
  readonly ahead: number;
}

/** The sessions of a kind in a month. */
export interface KindTotals {
  readonly kind: string;
  readonly kept: AdherenceShare;
  readonly minutesDone: number;
  readonly ahead: number;
}

/** A month, as far as it had come on the day that was asked for. */
export interface MonthFacts {
  readonly month: IsoMonth;
  /** Four to six weeks, the first and the last with days of the neighbouring months. */
  readonly weeks: readonly MonthWeek[];
  /** Of the days of the month. */
  readonly kept: AdherenceShare;
  readonly minutesDone: number;
  readonly ahead: number;
  readonly moved: number;
  readonly restDays: number;
  /** In order of name. */
  readonly byKind: readonly KindTotals[];
  /**
   * The week with most sessions done, then most minutes, then the earlier; absent when none was done. A week belongs to
   * the month of its fourth day, as ISO 8601 gives weeks to years.
   */
  readonly best?: MonthWeek;
}

/** The sessions of some days, each with what became of it. */
interface MarkedSessions {
  readonly all: readonly MonthSession[];
  /** Those that count, up to today. */
  readonly past: readonly PlannedSession[];
}

function markedSessions(context: CheckContext, first: DayNumber, last: DayNumber): MarkedSessions {
  const known = plannedSessions(context.weeks, first, last);
  const outcomes = new Map(known.map((planned) => [planned.facts, planned]));
  const all = sessionsBetween(context.weeks, first, last).map((facts): MonthSession => {
    const planned = outcomes.get(facts);
    if (planned) {
      const { outcome, reason } = planned;
      return {
        facts,
        mark: outcome === 'done' ? 'kept' : outcome,
        ...(reason === undefined ? {} : { reason }),
      };
    }
    const to = facts.state === 'moved' ? facts.session.entry.moved?.value : undefined;
    return to === undefined ? { facts, mark: 'planned' } : { facts, mark: 'moved', movedTo: to };
  });
  // Those of today are in it only once something says what became of them.
  return { all, past: known.filter(({ day }) => day <= context.todayNumber) };
}

function monthDay(
  context: CheckContext,
  day: DayNumber,
  inMonth: { readonly first: DayNumber; readonly last: DayNumber },
  sessions: readonly MonthSession[],
): MonthDay {
  const { journal, plan, todayNumber, zone } = context;
  const begun = journal.span()?.first;
  const [note] = journal.notesOf(day);
  return {
    day,
    date: isoDate(day),
    isInMonth: inMonth.first <= day && day <= inMonth.last,
    when: day < todayNumber ? 'past' : day === todayNumber ? 'today' : 'ahead',
    sessions,
    ...(note ? { note: note.path } : {}),
    isBusy: isDayTaken(plan, day, zone),
    events: plan.events.filter(({ date }) => dayNumber(date) === day),
    isRest:
      begun !== undefined &&
      begun <= day &&
      day < todayNumber &&
      sessions.every(({ facts }) => facts.isRecovery),
  };
}

const isDone = ({ outcome }: PlannedSession): boolean => outcome === 'done';

function doneMinutes(sessions: readonly PlannedSession[]): number {
  return totalMinutes(sessions.filter(isDone).map(({ facts }) => facts));
}

function monthWeek(
  context: CheckContext,
  first: DayNumber,
  inMonth: { readonly first: DayNumber; readonly last: DayNumber },
): MonthWeek {
  const { all, past } = markedSessions(context, first, first + 6);
  const on = (day: DayNumber) => all.filter(({ facts }) => facts.session.day === day);
  return {
    first: isoDate(first),
    days: [0, 1, 2, 3, 4, 5, 6].map((offset) =>
      monthDay(context, first + offset, inMonth, on(first + offset)),
    ),
    past,
    done: past.filter(isDone).length,
    minutesDone: doneMinutes(past),
    ahead: all.filter(({ mark }) => mark === 'planned').length,
  };
}

function bestWeek(weeks: readonly MonthWeek[]): MonthWeek | undefined {
  return weeks
    .filter(({ done, days }) => done > 0 && days[3]?.isInMonth === true)
    .reduce<MonthWeek | undefined>((best, week) => {
      if (!best) return week;
      return week.done > best.done || (week.done === best.done && week.minutesDone > best.minutesDone)
        ? week
        : best;
    }, undefined);
}

function kindTotals(
  past: readonly PlannedSession[],
  sessions: readonly MonthSession[],
): readonly KindTotals[] {
  const { byKind } = adherenceFigures(past);
  const ahead = sessions.filter(({ mark }) => mark === 'planned').map(({ facts }) => facts.session.kind);
  const own = (kind: string) => past.filter(({ facts }) => facts.session.kind === kind);
  return [...new Set([...byKind.map(({ key }) => key), ...ahead])]
    .sort((one, other) => (one < other ? -1 : 1))
    .map((kind) => ({
      kind,
      kept: byKind.find(({ key }) => key === kind) ?? adherenceFigures([]).all,
      minutesDone: doneMinutes(own(kind)),
      ahead: ahead.filter((one) => one === kind).length,
    }));
}

/** The sessions of each kind that were planned in a week up to today, in the order in which the kinds first stand. */
export function kindCounts({ past }: MonthWeek): readonly KindCount[] {
  return [...new Set(past.map(({ facts }) => facts.session.kind))].map((kind) => {
    const own = past.filter(({ facts }) => facts.session.kind === kind);
    return { kind, planned: own.length, done: own.filter(isDone).length };
  });
}

/**
 * The days of `month` in weeks, with what became of each session, and the month's totals. Totals count the days of the
 * month alone; a week counts all seven of its days, as it is the week that was kept or not.
 * @param weekStart the weekday that weeks begin with on this calendar; the needs of a week are counted from Monday
 */
export function monthFacts(context: CheckContext, month: IsoMonth, weekStart: Weekday = 1): MonthFacts {
  const inMonth = daysOfMonth(month);
  const weeks: MonthWeek[] = [];
  for (
    let first = inMonth.first - ((isoWeekday(inMonth.first) - weekStart + 7) % 7);
    first <= inMonth.last;
    first += 7
  ) {
    weeks.push(monthWeek(context, first, inMonth));
  }
  const days = weeks.flatMap((week) => week.days).filter(({ isInMonth }) => isInMonth);
  const sessions = days.flatMap((day) => day.sessions);
  const past = weeks
    .flatMap((week) => week.past)
    .filter(({ day }) => inMonth.first <= day && day <= inMonth.last);
  const best = bestWeek(weeks);
  const count = (mark: SessionMark): number => sessions.filter((one) => one.mark === mark).length;
  return {
    month,
    weeks,
    kept: adherenceFigures(past).all,
    minutesDone: doneMinutes(past),
    ahead: count('planned'),
    moved: count('moved'),
    restDays: days.filter(({ isRest }) => isRest).length,
    byKind: kindTotals(past, sessions),
    ...(best ? { best } : {}),
  };
}
