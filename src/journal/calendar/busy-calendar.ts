import type { SourceRange } from '../../notation/source-range';
import type { DayNumber } from '../../notation/time/iso-date';
import type { InstantMinutes } from '../../notation/time/zoned-time';
import { type CalendarEvent, readEvent, readFreeBusy } from './calendar-event';
import type { CalendarProblem } from './calendar-problem';
import type { CalendarTime, LocalMinutes } from './calendar-time';
import { readComponents } from './component';
import { contentLines } from './content-lines';
import { type DayFields, dayFields } from './day-fields';
import { eventSeries } from './event-series';
import type { EventSeries, TakenTime, Window } from './taken-time';
import { readZoneClocks, type ZoneClocks } from './time-zones';
import { instantAt, localAt, namedClock, utcClock, type ZoneClock } from './zone-clock';

const minutesADay = 1440;

/** Days that are worked out and kept together. */
const daysABlock = 28;

/** The event that takes a time. */
export interface BusyEvent {
  readonly summary: string | undefined;
  /** Where it stands in its file. */
  readonly range: SourceRange;
}

/** Time that an event takes. */
export interface BusySpan {
  readonly start: InstantMinutes;
  readonly end: InstantMinutes;
  /** The same on the clock of the zone that was asked for. */
  readonly clock: { readonly start: LocalMinutes; readonly end: LocalMinutes };
  readonly event: BusyEvent;
}

/** Whole days that an event takes, both included. */
export interface BusyDays {
  readonly first: DayNumber;
  readonly last: DayNumber;
  readonly event: BusyEvent;
}

/** What is taken in a period, in order of its beginning. */
export interface BusyTimes {
  readonly spans: readonly BusySpan[];
  readonly days: readonly BusyDays[];
}

interface Block extends BusyTimes {
  readonly from: InstantMinutes;
}

/** Busy times read from a calendar file. It keeps what it has worked out. */
export class BusyCalendar {
  /** What cannot be used of the file, in order of place. */
  readonly problems: readonly CalendarProblem[];
  readonly #series: readonly EventSeries[];
  readonly #clocks: ZoneClocks;
  readonly #zones = new Map<string, { readonly clock: ZoneClock; readonly blocks: Map<number, Block> }>();

  constructor(series: readonly EventSeries[], clocks: ZoneClocks, problems: readonly CalendarProblem[]) {
    this.#series = series;
    this.#clocks = clocks;
    this.problems = problems;
  }

  /**
   * What is taken on the days `first` to `last`, both included, on the clock of `zone`. Spans are not cut at the ends
   * of the period.
   * @param zone tzdb name; times that the file gives without any zone are told on its clock
   * @throws RangeError when this machine does not know the zone
   */
  between(first: DayNumber, last: DayNumber, zone: string): BusyTimes {
    const spans: BusySpan[] = [];
    const days: BusyDays[] = [];
    const firstBlock = Math.floor(first / daysABlock);
    for (let index = firstBlock; index <= Math.floor(last / daysABlock); index += 1) {
      const block = this.#block(index, zone);
      // What reaches in from the block before has been taken from there.
      const isNew = (begin: number, from: number) => index === firstBlock || begin >= from;
      for (const span of block.spans) {
        const overlaps = span.clock.start < (last + 1) * minutesADay && span.clock.end > first * minutesADay;
        if (overlaps && isNew(span.start, block.from)) spans.push(span);
      }
      for (const one of block.days) {
        if (one.first <= last && one.last >= first && isNew(one.first, index * daysABlock)) days.push(one);
      }
    }
    return { spans, days };
  }

  #block(index: number, zone: string): Block {
    let known = this.#zones.get(zone);
    if (!known) {
      known = { clock: namedClock(zone), blocks: new Map() };
      this.#zones.set(zone, known);
    }
    let block = known.blocks.get(index);
    if (!block) {
      block = this.#readBlock(index * daysABlock, known.clock);
      known.blocks.set(index, block);
    }
    return block;
  }

  #readBlock(firstDay: DayNumber, clock: ZoneClock): Block {
    const window = windowOf(firstDay, firstDay + daysABlock - 1, clock, this.#clocks);
    const taken = this.#series.flatMap((series) => series.within(window));
    return {
      from: window.from,
      spans: taken.flatMap((one) => spanIn(one, window, clock)).sort((a, b) => a.start - b.start),
      days: taken.flatMap((one) => daysIn(one, window)).sort((a, b) => a.first - b.first),
    };
  }
}

function eventIn({ event: { summary, range } }: TakenTime): BusyEvent {
  return { summary, range };
}

function spanIn(taken: TakenTime, window: Window, clock: ZoneClock): readonly BusySpan[] {
  if (taken.kind !== 'span') return [];
  const { start, end } = taken;
  // An event without a length takes no time.
  if (end <= start || end <= window.from || start >= window.to) return [];
  const clockStart = localAt(clock, start);
  // A clock that goes back inside the span may show its end before its start.
  const clockEnd = Math.max(clockStart, localAt(clock, end));
  return [{ start, end, clock: { start: clockStart, end: clockEnd }, event: eventIn(taken) }];
}

function daysIn(taken: TakenTime, window: Window): readonly BusyDays[] {
  if (taken.kind !== 'days') return [];
  const { first, last } = taken;
  return last < window.firstDay || first > window.lastDay ? [] : [{ first, last, event: eventIn(taken) }];
}

function clockOfTime(time: CalendarTime, ownClock: ZoneClock, clocks: ZoneClocks): ZoneClock {
  if (time.kind === 'date' || time.zone === undefined) return ownClock;
  return time.zone === 'utc' ? utcClock : (clocks.clockOf(time.zone.name) ?? ownClock);
}

function windowOf(firstDay: DayNumber, lastDay: DayNumber, clock: ZoneClock, clocks: ZoneClocks): Window {
  // Most events ask for the same days.
  const known = new Map<string, readonly DayFields[]>();
  return {
    firstDay,
    lastDay,
    from: instantAt(clock, firstDay * minutesADay),
    to: instantAt(clock, (lastDay + 1) * minutesADay),
    clockOf: (time) => clockOfTime(time, clock, clocks),
    fields(first, last) {
      const name = `${first} ${last}`;
      const fields = known.get(name) ?? dayFields(first, last);
      known.set(name, fields);
      return fields;
    },
  };
}

/** The end of an event lies before its start, as far as the file's own clocks say. */
function endsBeforeStart({ start, end }: CalendarEvent, clocks: ZoneClocks): boolean {
  if (end?.kind !== 'at' || start.kind !== end.time.kind) return false;
  const instant = (time: CalendarTime) =>
    time.kind === 'date' ? time.day : instantAt(clockOfTime(time, utcClock, clocks), time.local);
  return instant(end.time) < instant(start);
}

/**
 * Reads the text of an iCalendar file (RFC 5545): the times that its events take, and what in it cannot be used.
 * Any text is valid input: an event that cannot be read is told of, and all others count. Events that are cancelled
 * or take no time, and those that this program has exported itself, count as none.
 */
export function readBusyCalendar(text: string): BusyCalendar {
  const { calendars, problems: structure } = readComponents(contentLines(text));
  const { clocks, problems: zoneProblems } = readZoneClocks(calendars);
  const problems: CalendarProblem[] = [...structure, ...zoneProblems];
  const events: CalendarEvent[] = [];
  const unknown = new Set<string>();
  for (const component of calendars.flatMap(({ parts }) => parts)) {
    const reading =
      component.name === 'VEVENT'
        ? readEvent(component)
        : component.name === 'VFREEBUSY'
          ? readFreeBusy(component)
          : undefined;
    if (!reading) continue;
    problems.push(...reading.problems);
    for (const [name, range] of reading.zones) {
      if (unknown.has(name) || clocks.clockOf(name)) continue;
      unknown.add(name);
      problems.push({ reason: 'unknown-zone', range, text: name });
    }
    for (const event of reading.events) {
      events.push(event);
      if (!endsBeforeStart(event, clocks)) continue;
      problems.push({ reason: 'ends-before-start', range: event.range, text: event.summary ?? '' });
    }
  }
  problems.sort((a, b) => a.range.start - b.range.start);
  return new BusyCalendar(eventSeries(events), clocks, problems);
}

/**
 * The times that a calendar takes on the days `first` to `last`, both included.
 * @param zone tzdb name of the clock that is looked at
 */
export function busyBetween(
  calendar: BusyCalendar,
  first: DayNumber,
  last: DayNumber,
  zone: string,
): BusyTimes {
  return calendar.between(first, last, zone);
}
