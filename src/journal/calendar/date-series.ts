import type { DayNumber } from '../../notation/time/iso-date';
import type { CalendarEvent, EventEnd } from './calendar-event';
import { type CalendarTime, dayOf } from './calendar-time';
import { recurrence } from './recurrence';
import type { RecurrenceRule } from './recurrence-rule';
import type { EventSeries, TakenTime } from './taken-time';

const minutesADay = 1440;

/** The last day of an event on dates, whose written end is the day after it. */
function lastDayOf(first: DayNumber, start: CalendarTime, end: EventEnd | undefined): DayNumber {
  if (!end) return first;
  const days =
    end.kind === 'at'
      ? dayOf(end.time) - dayOf(start)
      : end.length.days + Math.ceil(end.length.minutes / minutesADay);
  return first + Math.max(1, days) - 1;
}

/** A rule of an event on dates knows no hours. */
function withoutHours({ hours: _h, minutes: _m, seconds: _s, ...rule }: RecurrenceRule): RecurrenceRule {
  return rule;
}

/** An event on dates: its occurrences are told by their days alone. */
export function dateSeries(event: CalendarEvent, changes: readonly CalendarEvent[]): EventSeries {
  const first = dayOf(event.start);
  const followed = event.rules.map((rule) => ({
    rule,
    recurrence: recurrence(withoutHours(rule), first * minutesADay),
  }));
  const length = lastDayOf(0, event.start, event.end);
  const left = new Set([...event.excluded, ...changes.flatMap(({ replaces }) => replaces ?? [])].map(dayOf));
  const later = changes
    .flatMap((change) => {
      if (!change.replacesLater || !change.replaces) return [];
      const from = dayOf(change.replaces);
      const shift = dayOf(change.start) - from;
      return [{ from, shift, length: lastDayOf(0, change.start, change.end), event: change }];
    })
    .sort((a, b) => b.from - a.from);
  const reach = Math.max(0, ...later.map(({ shift, length: own }) => Math.abs(shift) + own));
  return {
    within(window) {
      const days = window.fields(window.firstDay - length - reach, window.lastDay + reach);
      const ends = new Map<DayNumber, number>([[first, length]]);
      for (const { rule, recurrence: followedRule } of followed) {
        for (const local of followedRule.on(days)) {
          const day = Math.floor(local / minutesADay);
          if (!rule.until || day <= dayOf(rule.until)) ends.set(day, length);
        }
      }
      for (const { start, end } of event.extra) {
        ends.set(dayOf(start), end ? lastDayOf(0, start, end) : length);
      }
      const taken: TakenTime[] = [];
      for (const [day, more] of ends) {
        if (left.has(day)) continue;
        const change = later.find(({ from }) => from <= day) ?? { shift: 0, length: more, event };
        const begin = day + change.shift;
        if (change.event.isBusy) {
          taken.push({ kind: 'days', first: begin, last: begin + change.length, event: change.event });
        }
      }
      return taken;
    },
  };
}
