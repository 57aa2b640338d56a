import type { DayNumber } from '../../notation/time/iso-date';
import type { InstantMinutes } from '../../notation/time/zoned-time';
import type { CalendarEvent } from './calendar-event';
import type { CalendarTime } from './calendar-time';
import type { DayFields } from './day-fields';
import type { ZoneClock } from './zone-clock';

/** When an event takes the athlete's time: from instant to instant, or whole days, both included. */
export type TakenTime =
  | {
      readonly kind: 'span';
      readonly start: InstantMinutes;
      readonly end: InstantMinutes;
      readonly event: CalendarEvent;
    }
  | {
      readonly kind: 'days';
      readonly first: DayNumber;
      readonly last: DayNumber;
      readonly event: CalendarEvent;
    };

/** The time that is looked at, and how times in it are told. */
export interface Window {
  readonly firstDay: DayNumber;
  readonly lastDay: DayNumber;
  readonly from: InstantMinutes;
  readonly to: InstantMinutes;
  clockOf(time: CalendarTime): ZoneClock;
  /** The fields of the days, in order. */
  fields(first: DayNumber, last: DayNumber): readonly DayFields[];
}

/** An event with all that repeats, leaves out or changes its occurrences. */
export interface EventSeries {
  /** What takes time in the window; some of it may lie outside. */
  within(window: Window): readonly TakenTime[];
}
