import type { JournalPlan } from '../../journal/journal';
import { type DayNumber, dayNumber } from '../../notation/time/iso-date';
import type { ClockSpan } from '../../training/free-hours';
import type { ProblemSource } from './problem-source';

const minutesADay = 1440;

/** Time that something takes, in minutes on the clock since a day began. */
export interface TakenTime extends ClockSpan {
  /** The same for one line or event on every day. */
  readonly id: string;
  readonly source: ProblemSource;
}

/**
 * What takes time on `day`: `#busy` lines, events of calendar files, and the journal's own `#event` lines, which take
 * their whole day. A day that is wholly taken is taken for sessions without a time as well.
 */
export function takenTimes(plan: JournalPlan, day: DayNumber, zone: string): readonly TakenTime[] {
  const lines = plan.busy.flatMap((busy, index): TakenTime[] =>
    [-1, 0, 1]
      .filter(
        (offset) => dayNumber(busy.days.first) <= day + offset && day + offset <= dayNumber(busy.days.last),
      )
      .map((offset) => ({
        id: `busy ${index}`,
        source: { about: 'busy', busy },
        start: (busy.span?.start ?? 0) + offset * minutesADay,
        end: (busy.span ? (busy.span.end ?? minutesADay) : minutesADay) + offset * minutesADay,
      })),
  );
  const calendars = plan.calendars.flatMap(({ path, calendar }): TakenTime[] => {
    const { spans, days } = calendar.between(day - 1, day + 1, zone);
    const taken = [
      ...spans.map(({ clock, event }) => ({
        event,
        start: clock.start - day * minutesADay,
        end: clock.end - day * minutesADay,
      })),
      ...days.map(({ first, last, event }) => ({
        event,
        start: (first - day) * minutesADay,
        end: (last + 1 - day) * minutesADay,
      })),
    ];
    return taken.map(({ event, start, end }) => ({
      id: `calendar ${path}:${event.range.start}`,
      source: { about: 'calendar', place: { note: path, range: event.range }, summary: event.summary },
      start,
      end,
    }));
  });
  const events = plan.events.flatMap((event, index): TakenTime[] => {
    const offset = dayNumber(event.date) - day;
    if (Math.abs(offset) > 1) return [];
    const start = offset * minutesADay;
    return [{ id: `event ${index}`, source: { about: 'event', event }, start, end: start + minutesADay }];
  });
  return [...lines, ...calendars, ...events].filter(({ start, end }) => end > 0 && start < 2 * minutesADay);
}
