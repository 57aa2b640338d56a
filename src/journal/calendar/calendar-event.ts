import ICAL from 'ical.js';
import type { SourceRange } from '../../notation/source-range';
import type { CalendarProblem, CalendarProblemReason } from './calendar-problem';
import { type CalendarTime, readCalendarTime, timesIn } from './calendar-time';
import type { CalendarComponent } from './component';
import { isOwnUid } from './own-events';
import { type CalendarProperty, propertyName, readProperty, textValue } from './property';
import { type RecurrenceRule, readRecurrenceRule } from './recurrence-rule';

/** How long an event lasts: days of the calendar, then minutes that pass (RFC 5545, section 3.3.6). */
export interface EventLength {
  readonly days: number;
  readonly minutes: number;
}

/** What says when an event ends. */
export type EventEnd =
  | { readonly kind: 'at'; readonly time: CalendarTime }
  | { readonly kind: 'after'; readonly length: EventLength };

/** A time at which an event takes place once more, with an end of its own where the file gives one. */
export interface ExtraTime {
  readonly start: CalendarTime;
  readonly end?: EventEnd;
}

/** An event as one component of a calendar file writes it. */
export interface CalendarEvent {
  /** Stands for the events that repeat it, and those that change one of its occurrences. */
  readonly uid: string | undefined;
  readonly summary: string | undefined;
  /** The line that names it, or its first. */
  readonly range: SourceRange;
  readonly revision: number;
  readonly start: CalendarTime;
  /** Without an end an event on a date lasts that day, and one at a time takes none. */
  readonly end: EventEnd | undefined;
  readonly rules: readonly RecurrenceRule[];
  readonly extra: readonly ExtraTime[];
  readonly excluded: readonly CalendarTime[];
  /** The occurrence of another event with its identifier that it stands in place of. */
  readonly replaces: CalendarTime | undefined;
  /** It stands in place of all later ones as well. */
  readonly replacesLater: boolean;
  /** Neither cancelled nor marked as taking no time. */
  readonly isBusy: boolean;
}

/** An event, when its times can be read, and what cannot be read of it. */
export interface EventReading {
  readonly events: readonly CalendarEvent[];
  readonly problems: readonly CalendarProblem[];
  /** Names of zones, and the first line that uses each. */
  readonly zones: ReadonlyMap<string, SourceRange>;
}

/** Reads properties one by one and gathers what is wrong with them. */
class PropertyReader {
  readonly problems: CalendarProblem[] = [];
  readonly zones = new Map<string, SourceRange>();
  readonly #properties: readonly CalendarProperty[];

  constructor({ lines }: CalendarComponent, names: ReadonlySet<string>) {
    this.#properties = lines.flatMap((line) => {
      if (!line.text.includes(':')) {
        this.problems.push({ reason: 'unreadable-line', range: line.range, text: line.text.slice(0, 40) });
        return [];
      }
      if (!names.has(propertyName(line))) return [];
      const property = readProperty(line);
      if (!property) {
        this.problems.push({ reason: 'unreadable-line', range: line.range, text: line.text.slice(0, 40) });
        return [];
      }
      const { tzid } = property.parameters;
      // A time in UTC needs no zone, and ought to name none.
      const isUtc = /Z\s*$/i.test(property.value);
      if (tzid !== undefined && !isUtc && !this.zones.has(tzid)) this.zones.set(tzid, line.range);
      return [property];
    });
  }

  all(name: string): readonly CalendarProperty[] {
    return this.#properties.filter((one) => one.name === name);
  }

  first(name: string): CalendarProperty | undefined {
    return this.#properties.find((one) => one.name === name);
  }

  word(name: string): string {
    return this.first(name)?.value.trim().toUpperCase() ?? '';
  }

  problem(reason: CalendarProblemReason, { line, value }: CalendarProperty): void {
    this.problems.push({ reason, range: line.range, text: value });
  }

  time(property: CalendarProperty | undefined): CalendarTime | undefined {
    if (!property) return undefined;
    const time = readCalendarTime(property.value, property.parameters.tzid);
    if (!time) this.problem('unreadable-time', property);
    return time;
  }

  /** The times of every property of a name, those that cannot be read left out. */
  times(name: string): readonly CalendarTime[] {
    return this.all(name).flatMap((property) => {
      const times = timesIn(property);
      if (times.includes(undefined)) this.problem('unreadable-time', property);
      return times.flatMap((time) => time ?? []);
    });
  }
}

/** Reads `PT1H30M` or `P7W`; `undefined` when it is no length, or one that goes backwards. */
function readLength(text: string): EventLength | undefined {
  const written = text.trim().toUpperCase();
  if (!/^\+?P(?:\d+W|(?:\d+D)?(?:T(?:\d+H)?(?:\d+M)?(?:\d+S)?)?)$/.test(written) || !/\d/.test(written)) {
    return undefined;
  }
  const { weeks, days, hours, minutes, seconds } = ICAL.Duration.fromString(written);
  return { days: weeks * 7 + days, minutes: hours * 60 + minutes + seconds / 60 };
}

/** `start/end` or `start/length` (RFC 5545, section 3.3.9). */
function readPeriod(text: string, zone: string | undefined): ExtraTime | undefined {
  const [from = '', to = ''] = text.split('/');
  const start = readCalendarTime(from, zone);
  const length = readLength(to);
  const time = readCalendarTime(to, zone);
  if (!start || (!length && !time)) return undefined;
  return { start, end: length ? { kind: 'after', length } : { kind: 'at', time: time ?? start } };
}

function periodsOf(reader: PropertyReader, property: CalendarProperty): readonly ExtraTime[] {
  return property.value.split(',').flatMap((text) => {
    const period = readPeriod(text, property.parameters.tzid);
    if (!period) reader.problem('unreadable-time', property);
    return period ?? [];
  });
}

function endOf(reader: PropertyReader): EventEnd | undefined {
  const written = reader.first('dtend');
  const time = reader.time(written);
  if (time) return { kind: 'at', time };
  const duration = reader.first('duration');
  if (!duration) return undefined;
  const length = readLength(duration.value);
  if (!length) reader.problem('unreadable-length', duration);
  return length && { kind: 'after', length };
}

function extraTimes(reader: PropertyReader): readonly ExtraTime[] {
  return reader.all('rdate').flatMap((property) => {
    if (property.parameters.value === 'period') return periodsOf(reader, property);
    const times = timesIn(property);
    if (times.includes(undefined)) reader.problem('unreadable-time', property);
    return times.flatMap((start) => (start ? [{ start }] : []));
  });
}

function rulesOf(reader: PropertyReader): readonly RecurrenceRule[] {
  return reader.all('rrule').flatMap((property) => {
    const rule = readRecurrenceRule(property.value);
    if (!rule) reader.problem('unreadable-rule', property);
    return rule ?? [];
  });
}

const eventProperties = new Set([
  'uid',
  'summary',
  'sequence',
  'dtstart',
  'dtend',
  'duration',
  'rrule',
  'rdate',
  'exdate',
  'recurrence-id',
  'status',
  'transp',
]);

/** Reads a `VEVENT`. The events of this program's own exports are none. */
export function readEvent(component: CalendarComponent): EventReading {
  const reader = new PropertyReader(component, eventProperties);
  const { problems, zones } = reader;
  const uid = reader.first('uid');
  if (uid && isOwnUid(textValue(uid))) return { events: [], problems: [], zones: new Map() };
  const written = reader.first('dtstart');
  const start = reader.time(written);
  if (!written)
    problems.push({ reason: 'missing-start', range: component.begin.range, text: component.name });
  if (!start) return { events: [], problems, zones };
  const replaced = reader.first('recurrence-id');
  const summary = reader.first('summary');
  const event: CalendarEvent = {
    uid: uid && textValue(uid),
    summary: summary && textValue(summary),
    range: (summary?.line ?? component.begin).range,
    revision: Number(reader.word('sequence')) || 0,
    start,
    end: endOf(reader),
    rules: rulesOf(reader),
    extra: extraTimes(reader),
    excluded: reader.times('exdate'),
    replaces: reader.time(replaced),
    replacesLater: replaced?.parameters.range?.toUpperCase() === 'THISANDFUTURE',
    isBusy: reader.word('status') !== 'CANCELLED' && reader.word('transp') !== 'TRANSPARENT',
  };
  return { events: [event], problems, zones };
}

/** Reads a `VFREEBUSY`: each busy period of it is an event of its own. */
export function readFreeBusy(component: CalendarComponent): EventReading {
  const reader = new PropertyReader(component, new Set(['freebusy']));
  const events = reader.all('freebusy').flatMap((property) =>
    periodsOf(reader, property).map(
      ({ start, end }): CalendarEvent => ({
        uid: undefined,
        summary: undefined,
        range: property.line.range,
        revision: 0,
        start,
        end,
        rules: [],
        extra: [],
        excluded: [],
        replaces: undefined,
        replacesLater: false,
        isBusy: property.parameters.fbtype?.toUpperCase() !== 'FREE',
      }),
    ),
  );
  return { events, problems: reader.problems, zones: reader.zones };
}
