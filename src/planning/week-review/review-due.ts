import type { Journal } from '../../journal/journal';
import { isoWeekday } from '../../notation/time/iso-date';
import { addWeeks, type IsoWeek, isoWeekOf } from '../../notation/time/iso-week';
import { type BlockWeek, blockWeek } from '../../training/adherence/block-week';
import { latestBreak } from '../../training/adherence/training-break';
import { recentPlannedSessions } from '../../training/history-rules/slipping';
import type { CheckContext } from '../../training/week-under-check';
import { findFacts } from './facts-block';
import { weekNoteOf } from './week-note-path';

/** Weekdays on which the running week is looked back on, 1 for Monday: from Saturday on, and from Thursday. */
const usualDay = 6;
const earlyDay = 4;
const monday = 1;

/** The week of the block that today lies in, counted from the latest goal or the return after a break. */
export function blockOf(context: CheckContext): BlockWeek | undefined {
  const { plan, today, todayNumber } = context;
  return blockWeek(plan, today, latestBreak(recentPlannedSessions(context), todayNumber));
}

/**
 * Whether the running week is looked back on by now: from Saturday on, and from Thursday in the weeks of a block in
 * which many slow down, so that what is left of the week can still be changed. Common practice, no source.
 */
function isTimeForThisWeek(context: CheckContext): boolean {
  const weekday = isoWeekday(context.todayNumber);
  return weekday >= usualDay || (weekday >= earlyDay && blockOf(context)?.reviewEarly === true);
}

/** The week that is looked back on: the running one once it is time for that, else the one before. */
export function weekToReview(context: CheckContext): IsoWeek {
  const current = isoWeekOf(context.today);
  return isTimeForThisWeek(context) ? current : addWeeks(current, -1);
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

/**
 * The week to be reminded of: from the day on which it is looked back on up to the Monday after it, while its note
 * has no facts. Who lets it pass is left in peace until the next.
 */
export function reviewDue(context: CheckContext): ReviewDue | undefined {
  const { journal, today, todayNumber } = context;
  const weekday = isoWeekday(todayNumber);
  const current = isoWeekOf(today);
  const week = weekday === monday ? addWeeks(current, -1) : current;
  if ((weekday !== monday && weekday < earlyDay) || !isOpen(journal, context, week)) return undefined;
  if (weekday === monday || weekday >= usualDay) return { week };
  const block = blockOf(context);
  return block?.reviewEarly ? { week, earlyInBlock: block.week } : undefined;
}
