import type { FreeHours, JournalPlan, Session } from '../journal/journal';
import { type DayNumber, dayNumber, isoWeekday } from '../notation/time/iso-date';

/** Minutes of the clock since the midnight with which a day begins; negative the evening before. */
export interface ClockSpan {
  readonly start: number;
  readonly end: number;
}

const minutesADay = 1440;

/** Whether hours given for a place or with somebody suit a session: one that says neither suits all of them. */
export function suits(session: Session, free: FreeHours): boolean {
  const { where } = session.entry;
  if (where !== undefined && free.where !== undefined && free.where !== where.value) return false;
  return free.with.length === 0 || session.entry.with.every((name) => free.with.includes(name.value));
}

/** Spans in order, those that touch or overlap joined. */
function joined(spans: readonly ClockSpan[]): readonly ClockSpan[] {
  const result: ClockSpan[] = [];
  for (const span of [...spans].sort((one, other) => one.start - other.start)) {
    const last = result.at(-1);
    if (last && span.start <= last.end) {
      result[result.length - 1] = { start: last.start, end: Math.max(last.end, span.end) };
    } else result.push(span);
  }
  return result;
}

/**
 * The hours around `day` that `lines` give, in clock minutes of that day. The evening before and the day after
 * belong to it as far as they reach in without a break.
 */
export function freeSpans(lines: readonly FreeHours[], day: DayNumber): readonly ClockSpan[] {
  const spans = [-1, 0, 1].flatMap((offset) =>
    lines
      .filter((free) => free.weekdays.some((weekday) => weekday === isoWeekday(day + offset)))
      .map(({ span }) => ({
        start: span.start + offset * minutesADay,
        // Hours without an end run to midnight.
        end: (span.end ?? minutesADay) + offset * minutesADay,
      })),
  );
  return joined(spans).filter((span) => span.end > 0 && span.start < minutesADay);
}

/** The times around `day` that events of the journal's calendar files take, in clock minutes of that day. */
function eventSpans({ calendars }: JournalPlan, day: DayNumber, zone: string): readonly ClockSpan[] {
  return calendars.flatMap(({ calendar }) =>
    calendar.between(day - 1, day + 1, zone).spans.map(({ clock }) => ({
      start: clock.start - day * minutesADay,
      end: clock.end - day * minutesADay,
    })),
  );
}

/** The whole days around `day` that events of the journal's calendar files take, in clock minutes of that day. */
function eventDays({ calendars }: JournalPlan, day: DayNumber, zone: string): readonly ClockSpan[] {
  return calendars.flatMap(({ calendar }) =>
    calendar.between(day - 1, day + 1, zone).days.map(({ first, last }) => ({
      start: (first - day) * minutesADay,
      end: (last + 1 - day) * minutesADay,
    })),
  );
}

/**
 * The hours around `day` that `#busy` lines and calendar files take, in minutes on the clock of `zone` since that day
 * began; a whole day is midnight to midnight.
 */
export function busySpans(plan: JournalPlan, day: DayNumber, zone: string): readonly ClockSpan[] {
  const spans = plan.busy.flatMap(({ days, span }) =>
    [-1, 0, 1]
      .filter((offset) => dayNumber(days.first) <= day + offset && day + offset <= dayNumber(days.last))
      .map((offset) => ({
        start: (span?.start ?? 0) + offset * minutesADay,
        end: (span ? (span.end ?? minutesADay) : minutesADay) + offset * minutesADay,
      })),
  );
  return joined([...spans, ...eventDays(plan, day, zone), ...eventSpans(plan, day, zone)]);
}
