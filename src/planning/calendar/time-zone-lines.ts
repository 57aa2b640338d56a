import { tzlib_get_ical_block } from 'timezones-ical-library';
import { readComponents } from '../../journal/calendar/component';
import { contentLines } from '../../journal/calendar/content-lines';
import { observanceClock, readObservances } from '../../journal/calendar/observances';
import { namedClock, type ZoneClock } from '../../journal/calendar/zone-clock';
import type { DayNumber } from '../../notation/time/iso-date';
import type { InstantMinutes } from '../../notation/time/zoned-time';
import { localValue, offsetValue } from './property-lines';

const minutesADay = 1440;

/** The library's definition of a zone under the name that is asked for, which may be an older one. */
function publishedLines(zone: string): readonly string[] {
  const [block = ''] = [tzlib_get_ical_block(zone)].flat();
  return contentLines(block).map(({ text }) => (text.startsWith('TZID:') ? `TZID:${zone}` : text));
}

function clockOf(lines: readonly string[]): ZoneClock | undefined {
  const { calendars } = readComponents(
    contentLines(['BEGIN:VCALENDAR', ...lines, 'END:VCALENDAR'].join('\r\n')),
  );
  const [zone] = calendars[0]?.parts ?? [];
  const observances = zone && readObservances(zone);
  return observances && observanceClock(observances);
}

/** The instants of the days at which a clock goes forth or back, to the minute. */
function changesOf(clock: ZoneClock, first: DayNumber, last: DayNumber): readonly InstantMinutes[] {
  const changes: InstantMinutes[] = [];
  for (let day = first; day <= last; day += 1) {
    let before = day * minutesADay;
    let after = before + minutesADay;
    if (clock.offsetAt(before) === clock.offsetAt(after)) continue;
    while (after - before > 1) {
      const middle = Math.floor((before + after) / 2);
      if (clock.offsetAt(middle) === clock.offsetAt(day * minutesADay)) before = middle;
      else after = middle;
    }
    changes.push(after);
  }
  return changes;
}

function agree(one: ZoneClock, other: ZoneClock, first: DayNumber, last: DayNumber): boolean {
  const instants = [first * minutesADay, ...changesOf(one, first, last), ...changesOf(other, first, last)];
  return instants.every(
    (instant) =>
      one.offsetAt(instant) === other.offsetAt(instant) &&
      one.offsetAt(instant - 1) === other.offsetAt(instant - 1),
  );
}

function observanceLines(name: string, local: number, from: number, to: number): readonly string[] {
  return [
    `BEGIN:${name}`,
    `DTSTART:${localValue(local)}`,
    `TZOFFSETFROM:${offsetValue(from)}`,
    `TZOFFSETTO:${offsetValue(to)}`,
    `END:${name}`,
  ];
}

/** A definition that holds for the days alone, change by change. */
function linesForDays(zone: string, clock: ZoneClock, first: DayNumber, last: DayNumber): readonly string[] {
  const begin = first * minutesADay;
  const offset = clock.offsetAt(begin);
  return [
    'BEGIN:VTIMEZONE',
    `TZID:${zone}`,
    ...observanceLines('STANDARD', begin + offset, offset, offset),
    ...changesOf(clock, first, last).flatMap((instant) => {
      const from = clock.offsetAt(instant - 1);
      const to = clock.offsetAt(instant);
      return observanceLines(to > from ? 'DAYLIGHT' : 'STANDARD', instant + from, from, to);
    }),
    'END:VTIMEZONE',
  ];
}

/**
 * The `VTIMEZONE` of a zone, good for the days `first` to `last`: the rules that a library publishes, as most calendars
 * like them best. They are those that hold now, for all time; where this machine's clock went or goes otherwise on one
 * of the days, its changes are written one by one instead.
 */
export function timeZoneLines(zone: string, first: DayNumber, last: DayNumber): readonly string[] {
  const clock = namedClock(zone);
  // The clocks of the world are at most a day apart.
  const from = first - 1;
  const to = last + 1;
  const published = publishedLines(zone);
  const theirs = published.length === 0 ? undefined : clockOf(published);
  return theirs && agree(clock, theirs, from, to) ? published : linesForDays(zone, clock, from, to);
}
