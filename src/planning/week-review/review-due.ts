import type { Journal } from '../../journal/journal';
import type { Weekday } from '../../notation/entries';
import { isoWeekday } from '../../notation/time/iso-date';
import { addWeeks, type IsoWeek, isoWeekOf } from '../../notation/time/iso-week';
import { type BlockWeek, blockWeek } from '../../training/adherence/block-week';
import { latestBreak } from '../../training/adherence/training-break';
import { recentPlannedSessions } from '../../training/history-rules/slipping';
import type { CheckContext } from '../../training/week-under-check';
import { findFacts } from './facts-block';
import { weekNoteOf } from './week-note-path';

/** The day on which the athlete looks back, or `off` for no reminder. */
export type ReviewDay = Weekday | 'off';

/** Common practice, no source. */
export const usualReviewDay: ReviewDay = 7;

/** Weekdays on which the running week is looked back on, 1 for Monday: from Saturday on, and from Thursday. */
const usualDay = 6;
const earlyDay = 4;

/** Up to this weekday a week that nobody has planned yet is still worth planning. No source. */
const middleOfWeek = 3;

/** Days that one is reminded of a look back in a week that has begun, the chosen one counted. No source. */
const daysOfReminder = 3;

/** The week of the block that today lies in, counted from the latest goal or the return after a break. */
export function blockOf(context: CheckContext): BlockWeek | undefined {
  const { plan, today, todayNumber } = context;
  return blockWeek(plan, today, latestBreak(recentPlannedSessions(context), todayNumber));
}

/** Whether the chosen day ends a week, as most do; one of its first days looks back on the week before. */
function endsWeek(day: ReviewDay): day is Weekday {
  return day !== 'off' && day >= earlyDay;
}

/** In the weeks of a block in which many slow down, what is left of the week can still be changed. */
function isEarly(context: CheckContext, weekday: number): boolean {
  return weekday >= earlyDay && blockOf(context)?.reviewEarly === true;
}

/**
 * Whether the running week is looked back on by now: from Saturday on or from the chosen day, and from Thursday in the
 * weeks of a block in which many slow down. Common practice, no source.
 */
function isTimeForThisWeek(context: CheckContext, day: ReviewDay): boolean {
  const weekday = isoWeekday(context.todayNumber);
  const from = endsWeek(day) ? Math.min(day, usualDay) : usualDay;
  return weekday >= from || isEarly(context, weekday);
}

/** The week that is looked back on: the running one once it is time for that, else the one before. */
export function weekToReview(context: CheckContext, day: ReviewDay = usualReviewDay): IsoWeek {
  const current = isoWeekOf(context.today);
  return isTimeForThisWeek(context, day) ? current : addWeeks(current, -1);
}

/** The last weekday on which one is reminded of the week before. */
function lastReminder(day: ReviewDay): number {
  return day === 'off' || endsWeek(day) ? middleOfWeek : Math.max(middleOfWeek, day + daysOfReminder - 1);
}

/**
 * The week that is planned after a look back: the one behind it. Who looks back so late that there is little left of
 * that one plans the next.
 */
export function weekToPlan(context: CheckContext, day: ReviewDay = usualReviewDay): IsoWeek {
  const current = isoWeekOf(context.today);
  const weekday = isoWeekday(context.todayNumber);
  return !isTimeForThisWeek(context, day) && weekday <= lastReminder(day) ? current : addWeeks(current, 1);
}

/** A week that nobody has looked back on yet. */
export interface ReviewDue {
  readonly week: IsoWeek;
  /** The week of its block, when the look back comes earlier for it. */
  readonly earlyInBlock?: number;
}

/** Whether a week has a session of a past day, and its note no facts yet. */
function isOpen(journal: Journal, context: CheckContext, week: IsoWeek): boolean {
  const note = weekNoteOf(journal, week);
  if (note && findFacts(note.text, week).status !== 'absent') return false;
  return context
    .weeks(week)
    .sessions.some(({ session, state }) => state === 'done' || session.day < context.todayNumber);
}

/** Whether one is reminded of a week while it runs. */
function dueInWeek(context: CheckContext, week: IsoWeek, day: Weekday): ReviewDue | undefined {
  if (endsWeek(day) && isoWeekday(context.todayNumber) >= day) return { week };
  const block = isoWeekday(context.todayNumber) >= earlyDay ? blockOf(context) : undefined;
  return block?.reviewEarly ? { week, earlyInBlock: block.week } : undefined;
}

/** Whether one is reminded of the week before on this weekday. */
function isReminded(weekday: number, day: Weekday): boolean {
  return weekday >= (endsWeek(day) ? 1 : day) && weekday <= lastReminder(day);
}

/**
 * The week to be reminded of: from the chosen day on, while its note has no facts, and at the latest to the middle of
 * the week behind it, when there is little left to plan. Who lets it pass is left in peace until the next.
 */
export function reviewDue(context: CheckContext, day: ReviewDay = usualReviewDay): ReviewDue | undefined {
  if (day === 'off') return undefined;
  const week = weekToReview(context, day);
  const isRunning = week === isoWeekOf(context.today);
  const whileOver = isReminded(isoWeekday(context.todayNumber), day) ? { week } : undefined;
  const due = isRunning ? dueInWeek(context, week, day) : whileOver;
  return due && isOpen(context.journal, context, week) ? due : undefined;
}
