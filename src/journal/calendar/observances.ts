import type { InstantMinutes } from '../../notation/time/zoned-time';
import { type CalendarTime, type LocalMinutes, readCalendarTime, timesIn } from './calendar-time';
import type { CalendarComponent } from './component';
import { dayFields, yearStart } from './day-fields';
import { type CalendarProperty, propertyName, readProperty } from './property';
import { type Recurrence, recurrence } from './recurrence';
import { readRecurrenceRule } from './recurrence-rule';
import type { ZoneClock } from './zone-clock';

/** A `STANDARD` or `DAYLIGHT` part of a time zone: from its onsets on the clock is `to` minutes ahead of UTC. */
export interface Observance {
  /** Minutes ahead of UTC before and after each onset. */
  readonly from: number;
  readonly to: number;
  /** Onsets that are written one by one, on the clock before the change. */
  readonly onsets: readonly LocalMinutes[];
  readonly rule?: {
    readonly first: LocalMinutes;
    readonly recurrence: Recurrence;
    /** Its last onset, or an instant before the next. */
    readonly until?: InstantMinutes;
  };
}

function readOffset(text: string | undefined): number | undefined {
  const [, sign, hours, minutes, seconds = '0'] = /^([+-])(\d{2})(\d{2})(\d{2})?$/.exec(text ?? '') ?? [];
  if (sign === undefined) return undefined;
  return (sign === '-' ? -1 : 1) * (Number(hours) * 60 + Number(minutes) + Number(seconds) / 60);
}

function localTime(time: CalendarTime | undefined): LocalMinutes | undefined {
  return time?.kind === 'time' ? time.local : undefined;
}

/** The end of a rule as an instant; it ought to be in UTC, and is taken as local where it is not. */
function instantOfUntil(until: CalendarTime, from: number): InstantMinutes {
  if (until.kind === 'date') return until.day * 1440 + 1440;
  return until.zone === 'utc' ? until.local : until.local - from;
}

function readObservance(part: CalendarComponent): Observance | undefined {
  const properties = part.lines.flatMap((line) =>
    ['dtstart', 'tzoffsetfrom', 'tzoffsetto', 'rrule', 'rdate'].includes(propertyName(line))
      ? (readProperty(line) ?? [])
      : [],
  );
  const named = (name: string): CalendarProperty | undefined => properties.find((one) => one.name === name);
  const from = readOffset(named('tzoffsetfrom')?.value);
  const to = readOffset(named('tzoffsetto')?.value);
  const first = localTime(readCalendarTime(named('dtstart')?.value ?? '', undefined));
  if (from === undefined || to === undefined || first === undefined) return undefined;
  const dates = properties.filter(({ name }) => name === 'rdate').flatMap((one) => timesIn(one));
  const onsets = [first, ...dates.flatMap((time) => localTime(time) ?? [])];
  const written = named('rrule');
  if (!written) return { from, to, onsets };
  const rule = readRecurrenceRule(written.value);
  if (!rule) return undefined;
  return {
    from,
    to,
    onsets,
    rule: {
      first,
      recurrence: recurrence(rule, first),
      ...(rule.until ? { until: instantOfUntil(rule.until, from) } : {}),
    },
  };
}

/** The parts of a `VTIMEZONE`; `undefined` when it has none, or one that cannot be read. */
export function readObservances(zone: CalendarComponent): readonly Observance[] | undefined {
  const parts = zone.parts.filter(({ name }) => name === 'STANDARD' || name === 'DAYLIGHT');
  const observances = parts.flatMap((part) => readObservance(part) ?? []);
  return observances.length > 0 && observances.length === parts.length ? observances : undefined;
}

/** From `instant` on the clock is `offset` minutes ahead of UTC; the latest change stands first. */
interface Change {
  readonly instant: InstantMinutes;
  readonly offset: number;
}

function yearOf(instant: InstantMinutes): number {
  return new Date(instant * 60_000).getUTCFullYear();
}

/** The onsets of an observance's rule in a year and the two before it, or in the last years of one that has ended. */
function ruleOnsets({ rule, from }: Observance, year: number): readonly InstantMinutes[] {
  if (!rule) return [];
  const { until = Number.POSITIVE_INFINITY } = rule;
  const lastYear = Math.min(year, until === Number.POSITIVE_INFINITY ? year : yearOf(until));
  const first = Math.max(yearStart(lastYear - 2), Math.floor(rule.first / 1440));
  return rule.recurrence
    .on(dayFields(first, yearStart(lastYear + 1) + 1))
    .map((local) => local - from)
    .filter((instant) => instant <= until);
}

/**
 * The clock that a zone's parts describe: the offset at an instant is that of the last onset before it. Before the
 * first onset of all the clock is where that one found it.
 */
export function observanceClock(observances: readonly Observance[]): ZoneClock {
  const years = new Map<number, readonly Change[]>();
  const changesFor = (year: number): readonly Change[] => {
    let changes = years.get(year);
    if (!changes) {
      changes = observances
        .flatMap((one) =>
          [...one.onsets.map((local) => local - one.from), ...ruleOnsets(one, year)].map((instant) => ({
            instant,
            offset: one.to,
          })),
        )
        .sort((a, b) => b.instant - a.instant);
      years.set(year, changes);
    }
    return changes;
  };
  const earliest = [...observances].sort((a, b) => (a.onsets[0] ?? 0) - (b.onsets[0] ?? 0))[0];
  return {
    offsetAt(instant) {
      const last = changesFor(yearOf(instant)).find((change) => change.instant <= instant);
      return last?.offset ?? earliest?.from ?? 0;
    },
  };
}
