import type { Need } from '../../journal/journal';
import type { Weekday } from '../../notation/entries';
import { isoWeekday } from '../../notation/time/iso-date';
import { addWeeks, type IsoWeek, isoWeekOf } from '../../notation/time/iso-week';
import type { WallMinutes } from '../../notation/time/wall-clock';
import type { SessionFacts } from '../../training/session-facts';
import { median } from '../../training/statistics/order-statistics';
import type { CheckContext } from '../../training/week-under-check';

/** How many weeks are looked back on. */
export const habitWeeks = 4;

/** A weekday and time at which sessions of one sort were kept. */
export interface Habit {
  readonly weekday: Weekday;
  /** Undefined when the sessions say no time. */
  readonly start: WallMinutes | undefined;
  /** In how many of the weeks. */
  readonly weeks: number;
}

/** When the athlete has really trained of late. */
export interface Habits {
  /** The habits of a need's sessions; those of its kind when the need has none. The most kept first. */
  of(kind: string, need: Need | undefined): readonly Habit[];
  /** Starts of all kept sessions. */
  readonly usualStarts: readonly WallMinutes[];
  /** Whether sessions are given times at all. */
  readonly saysTimes: boolean;
  /** The middle length of the sessions of a kind, in minutes. */
  usualMinutes(kind: string): number | undefined;
}

function habitsIn(sessions: readonly (SessionFacts & { readonly weeksAgo: number })[]): readonly Habit[] {
  const found = new Map<string, { habit: Omit<Habit, 'weeks'>; weeks: Set<number> }>();
  for (const { session, weeksAgo } of sessions) {
    const habit = {
      weekday: isoWeekday(session.day) as Weekday,
      start: session.entry.span?.value.start,
    };
    const key = `${habit.weekday} ${habit.start}`;
    const known = found.get(key) ?? { habit, weeks: new Set() };
    known.weeks.add(weeksAgo);
    found.set(key, known);
  }
  return [...found.values()]
    .map(({ habit, weeks }) => ({ ...habit, weeks: weeks.size }))
    .sort((one, other) => other.weeks - one.weeks || one.weekday - other.weekday);
}

/**
 * The habits of the four weeks before `week`, or up to the running week when `week` is further ahead. Only what was
 * done is a habit; while a journal has nothing done of a sort, what the running week still plans stands in for it.
 */
export function habitsBefore(context: CheckContext, week: IsoWeek): Habits {
  const current = isoWeekOf(context.today);
  const before = addWeeks(week, -1);
  const last = before < current ? before : current;
  const standing = Array.from({ length: habitWeeks }, (_, weeksAgo) =>
    context.weeks(addWeeks(last, -weeksAgo)).standing.map((facts) => ({ ...facts, weeksAgo })),
  ).flat();
  const kept = standing.filter(({ state }) => state === 'done');
  const planned = standing.filter(({ state }) => state === 'planned');
  const like = (kind: string, need: Need | undefined) => (sessions: typeof standing) => {
    const ofNeed = sessions.filter(({ countsFor }) => need !== undefined && countsFor.includes(need));
    return ofNeed.length > 0 ? ofNeed : sessions.filter(({ session }) => session.kind === kind);
  };
  const starts = (sessions: typeof standing) =>
    sessions.flatMap(({ session }) => session.entry.span?.value.start ?? []);
  return {
    of(kind, need) {
      const pick = like(kind, need);
      const done = pick(kept);
      return habitsIn(done.length > 0 ? done : pick(planned));
    },
    usualStarts: [...new Set(starts(kept.length > 0 ? kept : planned))],
    saysTimes: [...standing, ...context.weeks(week).standing].some(({ session }) => session.entry.span),
    usualMinutes(kind) {
      const middle = median(
        standing.flatMap(({ session, minutes }) =>
          session.kind === kind && minutes !== undefined ? [minutes] : [],
        ),
      );
      return middle === undefined ? undefined : Math.round(middle);
    },
  };
}

/** Quarters of an hour that another weekday is worth. */
const otherWeekday = 48;

function quartersApart(one: WallMinutes | undefined, other: WallMinutes | undefined): number {
  if (one === undefined || other === undefined) return 0;
  return Math.min(otherWeekday, Math.round(Math.abs(one - other) / 15));
}

/**
 * How far a place is from what was really kept: quarters of an hour to the nearest kept time, another weekday as 48,
 * and 1 for each of the four weeks in which the habit was not kept. Without a habit of the sort, only the hour counts,
 * against every kept session. Whole, at least 0; the weights are assumptions.
 */
export function deviationFrom(
  habits: readonly Habit[],
  usualStarts: readonly WallMinutes[],
  weekday: Weekday,
  start: WallMinutes | undefined,
): number {
  if (habits.length === 0) {
    return usualStarts.length === 0
      ? 0
      : Math.min(...usualStarts.map((usual) => quartersApart(usual, start)));
  }
  return Math.min(
    ...habits.map(
      (habit) =>
        (habit.weekday === weekday ? 0 : otherWeekday) +
        quartersApart(habit.start, start) +
        habitWeeks -
        habit.weeks,
    ),
  );
}
