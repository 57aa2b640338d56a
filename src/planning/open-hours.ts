import type { JournalPlan, Session } from '../journal/journal';
import type { DayNumber } from '../notation/time/iso-date';
import type { WallMinutes } from '../notation/time/wall-clock';
import { busySpans, type ClockSpan, freeSpans, suits } from '../training/free-hours';
import { isDayTaken } from '../training/open-days';

/** Hours in which a session of a journal without `#free` lines may stand: an assumption, no published value. */
export const wakingHours: ClockSpan = { start: 7 * 60, end: 21 * 60 + 30 };

/** `spans` without the minutes of `taken`. */
export function without(spans: readonly ClockSpan[], taken: readonly ClockSpan[]): readonly ClockSpan[] {
  let left = spans;
  for (const busy of taken) {
    left = left.flatMap((span) => {
      if (busy.end <= span.start || busy.start >= span.end) return [span];
      return [
        { start: span.start, end: Math.min(span.end, busy.start) },
        { start: Math.max(span.start, busy.end), end: span.end },
      ].filter((part) => part.end > part.start);
    });
  }
  return left;
}

/**
 * The hours of `day` in which `session` may stand: free ones that suit its place and company, or the waking hours
 * where the journal names none, without what is busy. Empty on a day that is taken.
 */
export function openHours(
  plan: JournalPlan,
  session: Session,
  day: DayNumber,
  zone: string,
): readonly ClockSpan[] {
  if (isDayTaken(plan, day, zone)) return [];
  const free =
    plan.free.length === 0
      ? [wakingHours]
      : freeSpans(
          plan.free.filter((one) => suits(session, one)),
          day,
        );
  return without(free, busySpans(plan, day, zone));
}

/** Whether a session without a time may stand on `day`. */
export function isOpenFor(plan: JournalPlan, session: Session, day: DayNumber, zone: string): boolean {
  if (isDayTaken(plan, day, zone)) return false;
  return plan.free.length === 0 || openHours(plan, session, day, zone).length > 0;
}

/**
 * Whether `session` may run from `start` for `minutes` on `day`: in no busy time, and in free hours that suit it
 * where the journal names any.
 */
export function mayRun(
  plan: JournalPlan,
  session: Session,
  day: DayNumber,
  start: WallMinutes,
  minutes: number,
  zone: string,
): boolean {
  const run = { start, end: start + minutes };
  const left = without([run], busySpans(plan, day, zone))[0];
  if (isDayTaken(plan, day, zone) || left?.start !== run.start || left.end !== run.end) return false;
  if (plan.free.length === 0) return true;
  const suitable = freeSpans(
    plan.free.filter((one) => suits(session, one)),
    day,
  );
  return suitable.some((span) => span.start <= run.start && run.end <= span.end);
}

/** Steps between starts: finer in free hours, which are few, than in a whole day. */
const steps = { short: 15, long: 30 } as const;
const longSpan = 6 * 60;

/** Starts at every step from the beginning of the open hours that leave time enough. */
export function startsIn(hours: readonly ClockSpan[], minutes: number): readonly WallMinutes[] {
  const starts = new Set<number>();
  for (const span of hours) {
    const last = Math.min(span.end - minutes, 1439);
    const step = span.end - span.start > longSpan ? steps.long : steps.short;
    for (let start = span.start; start <= last; start += step) if (start >= 0) starts.add(start);
    // The latest that fits, which a long gap may ask for.
    if (last >= Math.max(0, span.start)) starts.add(last);
  }
  return [...starts];
}
