import type { Weekday } from '../../notation/entries';
import { type DayNumber, dayNumber, type IsoDate, isoWeekday } from '../../notation/time/iso-date';
import { isoWeekOfDay } from '../../notation/time/iso-week';
import type { WallMinutes } from '../../notation/time/wall-clock';
import { fillMessage, type Message } from '../../training/finding';
import { message } from '../../training/wording';
import { reviewUid } from './event-identity';
import type { EventToWrite } from './event-lines';
import type { EventOptions } from './session-event';

const minutesADay = 1440;

/** How long a look back takes. */
const minutesOfReview = 10;

/** When a calendar reminds of the look back, once a week. */
export interface ReviewReminder {
  readonly weekday: Weekday;
  readonly at: WallMinutes;
  /** Makes the sentence that stands in the calendar; an English one when left out. */
  readonly say?: (message: Message) => string;
}

/**
 * The look back on each week of a span, on its own day and time. It takes no time of the calendar, and reminds of
 * itself as sessions do, as long as it is still to come.
 */
export function reviewEvents(
  first: DayNumber,
  last: DayNumber,
  today: IsoDate,
  { weekday, at, say = fillMessage }: ReviewReminder,
  { journalId, zone, alarmMinutes }: EventOptions,
): readonly EventToWrite[] {
  const events: EventToWrite[] = [];
  const from = first + ((weekday - isoWeekday(first) + 7) % 7);
  for (let day = from; day <= last; day += 7) {
    events.push({
      uid: reviewUid(isoWeekOfDay(day), journalId),
      sequence: 0,
      time: { kind: 'time', zone, start: day * minutesADay + at, end: { minutes: minutesOfReview } },
      summary: say(message('Look back on the week, plan the next')),
      isCancelled: false,
      takesTime: false,
      ...(alarmMinutes !== undefined && day >= dayNumber(today) ? { alarm: alarmMinutes } : {}),
    });
  }
  return events;
}
