import type { Session } from '../../journal/journal';
import type { SessionEntry, Weekday } from '../../notation/entries';
import { readNote } from '../../notation/read-note';
import { type DayNumber, isoDate, isoWeekday } from '../../notation/time/iso-date';
import { formatTime, type WallMinutes } from '../../notation/time/wall-clock';
import type { Message } from '../../training/finding';
import { freeSpans } from '../../training/free-hours';
import type { TimedSession } from '../../training/gap';
import { sessionFacts } from '../../training/session-facts';
import type { CheckContext } from '../../training/week-under-check';
import { message, weekdayName } from '../../training/wording';
import { isOpenFor, mayRun, openHours, startsIn } from '../open-hours';
import { type SessionToWrite, sessionLine } from '../session-line';
import type { Demand } from './demand';
import type { Habit, Habits } from './habits';

/** A day and time at which a demanded session could stand. */
export interface Place {
  /** Differs between all places of one planning. */
  readonly id: number;
  readonly day: DayNumber;
  readonly start: WallMinutes | undefined;
  readonly timed: TimedSession;
  /** The smaller, the more like the athlete's own weeks. */
  readonly cost: number;
  readonly reason: Message;
}

/** Costs of a place by what it goes by; within one of the four, nearness to the usual hour decides. */
const costs = { sameNeedLastWeek: 0, sameKindLastWeek: 20, sameKindEarlier: 40, other: 100 } as const;

/** What the session's line says at a place; one with a time says how long it lasts as well. */
export function sessionAt(demand: Demand, start: WallMinutes | undefined): SessionToWrite {
  return start === undefined ? demand.session : { ...demand.session, minutes: demand.minutes, start };
}

/** A session line read back, so that a planned session is to the rules exactly what its note will be. */
function entryOf(session: SessionToWrite): SessionEntry | undefined {
  const entry = readNote(sessionLine(session)).entries[0];
  return entry?.tag === 'session' ? entry : undefined;
}

function sameNeed(habit: Habit, demand: Demand): boolean {
  return demand.need !== undefined && habit.facts.countsFor.includes(demand.need);
}

function sameKind(habit: Habit, demand: Demand): boolean {
  return habit.facts.session.kind === demand.session.kind;
}

function habitCost(habit: Habit, demand: Demand): number {
  if (habit.weeksAgo === 1) return sameNeed(habit, demand) ? costs.sameNeedLastWeek : costs.sameKindLastWeek;
  return costs.sameKindEarlier + habit.weeksAgo;
}

/** The weekdays and times of the weeks before at which the same need or kind stood, the dearest last. */
function customs(demand: Demand, habits: Habits): readonly (Habit & { readonly cost: number })[] {
  return habits.all
    .filter((habit) => sameNeed(habit, demand) || sameKind(habit, demand))
    .map((habit) => ({ ...habit, cost: habitCost(habit, demand) }))
    .sort((one, other) => one.cost - other.cost);
}

/** Hours from `start` to the nearest usual start, at most a day. */
function hoursFromUsual(start: WallMinutes, usual: readonly WallMinutes[]): number {
  return Math.min(24, ...usual.map((one) => Math.abs(one - start) / 60));
}

interface Slot {
  readonly day: DayNumber;
  readonly start: WallMinutes | undefined;
  readonly cost: number;
  readonly reason: Message;
}

/** Where the places of one demand come from. */
interface Search {
  readonly context: CheckContext;
  readonly habits: Habits;
  readonly demand: Demand;
  /** The session, its day and time aside. */
  readonly pattern: Session;
}

function slotsOn(search: Search, day: DayNumber): readonly Slot[] {
  const { context, habits, demand, pattern } = search;
  const { plan, zone } = context;
  const weekday = isoWeekday(day) as Weekday;
  const known = customs(demand, habits);
  const here = known.filter((habit) => habit.weekday === weekday);
  const slots: Slot[] = [];
  const add = (slot: Slot) => {
    if (!slots.some((one) => one.start === slot.start)) slots.push(slot);
  };
  if (plan.free.length === 0 && !habits.saysTimes) {
    if (!isOpenFor(plan, pattern, day, zone)) return [];
    const custom = here[0];
    const reason = custom
      ? message('{0}, as in the weeks before', weekdayName(day))
      : message('{0} breaks no rule', weekdayName(day));
    return [{ day, start: undefined, cost: custom?.cost ?? costs.other, reason }];
  }
  const hours = openHours(plan, pattern, day, zone);
  const { minutes } = demand;
  for (const { start, cost, weeksAgo } of here) {
    if (start === undefined || !mayRun(plan, pattern, day, start, minutes, zone)) continue;
    const reason =
      weeksAgo === 1
        ? message('{0} {1}, as in the week before', weekdayName(day), formatTime(start))
        : message('{0} {1}, as in the weeks before', weekdayName(day), formatTime(start));
    add({ day, start, cost, reason });
  }
  const usual = (known.length > 0 ? known : habits.all).flatMap(({ start }) => start ?? []);
  const free = freeSpans(plan.free, day);
  for (const start of startsIn(hours, minutes)) {
    const span = free.find((one) => one.start <= start && start + minutes <= one.end);
    const reason = span
      ? message(
          '{0} is free from {1} to {2}',
          weekdayName(day),
          formatTime(Math.max(0, span.start)),
          formatTime(span.end),
        )
      : message('{0} {1} breaks no rule', weekdayName(day), formatTime(start));
    // Without any custom the beginning of the free hours is as good as any.
    const distance = usual.length > 0 ? hoursFromUsual(start, usual) : (start - (hours[0]?.start ?? 0)) / 60;
    add({ day, start, cost: costs.other + distance, reason });
  }
  return slots;
}

/** Counts places through, so that each has an id of its own. */
export type Numbering = () => number;

/**
 * Every place of a demand on `days` that its own hours allow, in order of day and time. Rules that concern other
 * sessions are not looked at here.
 */
export function placesFor(
  context: CheckContext,
  habits: Habits,
  demand: Demand,
  days: readonly DayNumber[],
  number: Numbering,
): readonly Place[] {
  const timeless = entryOf(sessionAt(demand, undefined));
  const timed = entryOf(sessionAt(demand, 0));
  const firstDay = days[0];
  if (!timeless || !timed || firstDay === undefined) return [];
  const standingAt = (day: DayNumber, start: WallMinutes | undefined, note: string): Session => ({
    note,
    entry: start === undefined ? timeless : { ...timed, span: { value: { start }, range: timed.range } },
    date: isoDate(day),
    day,
    kind: demand.session.kind,
  });
  const search: Search = { context, habits, demand, pattern: standingAt(firstDay, undefined, '') };
  return days.flatMap((day) =>
    slotsOn(search, day).map(({ start, cost, reason }) => {
      const id = number();
      const session = standingAt(day, start, `planned/${id}`);
      const facts = sessionFacts(session, demand.need ? [demand.need] : [], context.plan, context.today);
      return { id, day, start, timed: context.timed(facts), cost, reason };
    }),
  );
}

/** The days of `week` that are not over. */
export function daysLeft(context: CheckContext, monday: DayNumber): readonly DayNumber[] {
  return [0, 1, 2, 3, 4, 5, 6].map((offset) => monday + offset).filter((day) => day >= context.todayNumber);
}
