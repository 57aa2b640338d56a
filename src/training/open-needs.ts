import type { Goal, JournalPlan, Need } from '../journal/journal';
import { type DayNumber, dayNumber } from '../notation/time/iso-date';
import { type IsoWeek, mondayOf } from '../notation/time/iso-week';

/** Whether a goal is worked at on any of the days `first` to `last`. */
export function isGoalOpen(goal: Goal, first: DayNumber, last: DayNumber): boolean {
  if (goal.closed) return false;
  const begun = goal.from === undefined || dayNumber(goal.from) <= last;
  const over = goal.by !== undefined && dayNumber(goal.by) < first;
  return begun && !over;
}

/** The goals in order of nearness: by date, undated ones last, then as they stand in the journal. */
export function nearestFirst(goals: Iterable<Goal>): readonly Goal[] {
  return [...goals].sort((one, other) => {
    if (one.by === other.by) return 0;
    if (one.by === undefined) return 1;
    return other.by === undefined || one.by < other.by ? -1 : 1;
  });
}

/** The goals that are open in `week`, nearest first. */
export function openGoals(plan: JournalPlan, week: IsoWeek): readonly Goal[] {
  const monday = mondayOf(week);
  return nearestFirst(plan.goals.values()).filter((goal) => isGoalOpen(goal, monday, monday + 6));
}

/** What `week` is asked to hold: needs of its open goals, nearest first, then those of every week. */
export function openNeeds(plan: JournalPlan, week: IsoWeek): readonly Need[] {
  return [
    ...openGoals(plan, week).flatMap((goal) => goal.needs),
    ...plan.needs.filter((need) => need.goal === undefined),
  ];
}
