import type { JournalPlan } from '../journal/journal';
import { type DayNumber, dayNumber, isoWeekday } from '../notation/time/iso-date';
import type { WeekUnderCheck } from './week-under-check';

/** Whether a `#busy` line, or an event of a calendar file, takes the whole of `day`. */
export function isDayTaken(plan: JournalPlan, day: DayNumber, zone: string): boolean {
  return (
    plan.busy.some(
      (busy) =>
        busy.span === undefined && dayNumber(busy.days.first) <= day && day <= dayNumber(busy.days.last),
    ) || plan.calendars.some(({ calendar }) => calendar.between(day, day, zone).days.length > 0)
  );
}

/** Whether sessions may stand on `day`: it is not wholly taken, and has free hours when the journal names any. */
export function isDayOpen(plan: JournalPlan, day: DayNumber, zone: string): boolean {
  if (isDayTaken(plan, day, zone)) return false;
  return (
    plan.free.length === 0 || plan.free.some((free) => free.weekdays.some((one) => one === isoWeekday(day)))
  );
}

/** The days of the week from today on, today included, on which sessions may stand. */
export function openDaysLeft(week: WeekUnderCheck): readonly DayNumber[] {
  const days: DayNumber[] = [];
  for (let day = Math.max(week.monday, week.todayNumber); day <= week.sunday; day += 1) {
    if (isDayOpen(week.plan, day, week.zone)) days.push(day);
  }
  return days;
}
