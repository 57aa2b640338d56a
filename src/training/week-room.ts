import { openDaysLeft } from './open-days';
import type { SessionFacts } from './session-facts';
import type { WeekUnderCheck } from './week-under-check';

/** Whether what is left of a week can hold more sessions of some sort. */
export interface WeekRoom {
  readonly isOver: boolean;
  readonly hasRoom: boolean;
  /** Open days from today on that hold no session of that sort yet. */
  readonly daysLeft: number;
}

/**
 * Whether the open days left can take `missing` more sessions of the sort of `counted`, one a day. Gaps between
 * them are not looked at: that is for planning.
 */
export function weekRoom(week: WeekUnderCheck, counted: readonly SessionFacts[], missing: number): WeekRoom {
  const taken = new Set(counted.map((facts) => facts.session.day));
  const daysLeft = openDaysLeft(week).filter((day) => !taken.has(day)).length;
  return { isOver: week.sunday < week.todayNumber, hasRoom: missing <= daysLeft, daysLeft };
}
