import type { JournalPlan } from '../journal/journal';
import { type DayNumber, dayNumber, isoWeekday } from '../notation/time/iso-date';
import type { WeekUnderCheck } from './week-under-check';

/** Whether a `#busy` line takes the whole of `day`. */
export function isDayTaken(plan: JournalPlan, day: DayNumber): boolean {
  return plan.busy.some(
    (busy) =>
      busy.span === undefined && dayNumber(busy.days.first) <= day && day <= dayNumber(busy.days.last),
  );
}

/** Whether sessions may stand on `day`: it is not wholly taken, and has free hours when the journal names any. */
export function isDayOpen(plan: JournalPlan, day: DayNumber): boolean {
  if (isDayTaken(plan, day)) return false;
  return (
    plan.free.length === 0 || plan.free.some((free) => free.weekdays.some((one) => one === isoWeekday(day)))
  );
}

/** The days of the week from today on, today included, on which sessions may stand. */
export function openDaysLeft(week: WeekUnderCheck): readonly DayNumber[] {
  const days: DayNumber[] = [];
  for (let day = Math.max(week.monday, week.todayNumber); day <= week.sunday; day += 1) {
    if (isDayOpen(week.plan, day)) days.push(day);
  }
  return days;
}
