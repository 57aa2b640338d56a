import type { FreeHours, JournalPlan, Session } from '../../journal/journal';
import type { DayNumber } from '../../notation/time/iso-date';
import { type ClockSpan, freeSpans, suits } from '../../training/free-hours';
import { wakingHours } from '../open-hours';

/**
 * The lines of free hours in which a session is to be placed. Hours that name its company are the hours of that
 * company: where there are any, it stands in no others; the same with its place. A session that was written elsewhere
 * by hand may stand there all the same, as far as {@link suits} goes.
 */
export function ownHours(free: readonly FreeHours[], session: Session): readonly FreeHours[] {
  const suitable = free.filter((line) => suits(session, line));
  const company = session.entry.with.map(({ value }) => value);
  const together = suitable.filter(
    (line) => company.length > 0 && company.every((name) => line.with.includes(name)),
  );
  const inCompany = together.length > 0 ? together : suitable;
  const where = session.entry.where?.value;
  const there = inCompany.filter((line) => where !== undefined && line.where === where);
  return there.length > 0 ? there : inCompany;
}

/** The hours of `day` that lines of free hours leave to a session, busy times not looked at. */
export function hoursOn(
  plan: JournalPlan,
  lines: readonly FreeHours[],
  day: DayNumber,
): readonly ClockSpan[] {
  return plan.free.length === 0 ? [wakingHours] : freeSpans(lines, day);
}
