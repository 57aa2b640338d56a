import type { LocalMinutes } from '../../journal/calendar/calendar-time';
import type { DayNumber } from '../../notation/time/iso-date';
import type { InstantMinutes } from '../../notation/time/zoned-time';
import { dateValue, localValue, textLine, utcValue } from './property-lines';

/** When an event takes place. */
export type EventTime =
  | { readonly kind: 'day'; readonly day: DayNumber }
  | {
      readonly kind: 'time';
      readonly zone: string;
      readonly start: LocalMinutes;
      /** What the clock shows at its end, or real minutes where the clock alone would not tell. */
      readonly end?: { readonly local: LocalMinutes } | { readonly minutes: number };
    };

/** An event to write. */
export interface EventToWrite {
  readonly uid: string;
  /** How often it has been changed. */
  readonly sequence: number;
  readonly time: EventTime;
  readonly summary: string;
  readonly description?: string;
  readonly location?: string;
  readonly isCancelled: boolean;
  /** Whether nothing else can stand at its time. */
  readonly takesTime: boolean;
  /** Minutes before its start at which the calendar reminds of it. */
  readonly alarm?: number;
}

function isUtc(zone: string): boolean {
  return zone === 'UTC' || zone === 'Etc/UTC';
}

function timeLine(name: string, zone: string, local: LocalMinutes): string {
  return isUtc(zone) ? `${name}:${utcValue(local)}` : `${name};TZID=${zone}:${localValue(local)}`;
}

/** Start and end of an event (RFC 5545, section 3.6.1); the end of a day is the day behind it. */
function timeLines(time: EventTime): readonly string[] {
  if (time.kind === 'day') {
    return [`DTSTART;VALUE=DATE:${dateValue(time.day)}`, `DTEND;VALUE=DATE:${dateValue(time.day + 1)}`];
  }
  const start = timeLine('DTSTART', time.zone, time.start);
  if (!time.end) return [start];
  return 'local' in time.end
    ? [start, timeLine('DTEND', time.zone, time.end.local)]
    : [start, `DURATION:PT${Math.round(time.end.minutes)}M`];
}

function alarmLines(event: EventToWrite): readonly string[] {
  if (event.alarm === undefined || event.isCancelled || event.time.kind === 'day') return [];
  return [
    'BEGIN:VALARM',
    'ACTION:DISPLAY',
    textLine('DESCRIPTION', event.summary),
    `TRIGGER:-PT${Math.round(event.alarm)}M`,
    'END:VALARM',
  ];
}

/**
 * The lines of a `VEVENT`, not folded.
 * @param stamp when it was last changed
 */
export function eventLines(event: EventToWrite, stamp: string): readonly string[] {
  const { description = '', location = '' } = event;
  return [
    'BEGIN:VEVENT',
    `UID:${event.uid}`,
    `DTSTAMP:${stamp}`,
    `SEQUENCE:${event.sequence}`,
    `STATUS:${event.isCancelled ? 'CANCELLED' : 'CONFIRMED'}`,
    ...timeLines(event.time),
    textLine('SUMMARY', event.summary),
    ...(description === '' ? [] : [textLine('DESCRIPTION', description)]),
    ...(location === '' ? [] : [textLine('LOCATION', location)]),
    `TRANSP:${event.takesTime && !event.isCancelled ? 'OPAQUE' : 'TRANSPARENT'}`,
    ...alarmLines(event),
    'END:VEVENT',
  ];
}

/** Zones whose names stand in these lines. */
export function zonesIn(lines: readonly string[]): ReadonlySet<string> {
  return new Set(lines.flatMap((line) => /^DT(?:START|END);TZID=([^:;]+):/.exec(line)?.[1] ?? []));
}

/** What an event says that was cancelled by being left out: as before, but that it takes place. */
export function cancelledLines(
  lines: readonly string[],
  sequence: number,
  stamp: InstantMinutes,
): readonly string[] {
  const alarm = lines.indexOf('BEGIN:VALARM');
  const own = alarm < 0 ? lines : [...lines.slice(0, alarm), 'END:VEVENT'];
  const others = own.filter((line) => !/^(?:DTSTAMP|SEQUENCE|STATUS|TRANSP)[:;]/.test(line));
  const [begin = 'BEGIN:VEVENT', ...rest] = others;
  return [
    begin,
    `DTSTAMP:${utcValue(stamp)}`,
    `SEQUENCE:${sequence}`,
    'STATUS:CANCELLED',
    'TRANSP:TRANSPARENT',
    ...rest,
  ];
}
