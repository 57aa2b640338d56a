import type { InstantMinutes } from '../../notation/time/zoned-time';
import type { CalendarEvent, EventEnd } from './calendar-event';
import { type CalendarTime, dayOf, type LocalMinutes } from './calendar-time';
import { recurrence } from './recurrence';
import type { EventSeries, TakenTime, Window } from './taken-time';
import { instantAt, localAt, type ZoneClock } from './zone-clock';

const minutesADay = 1440;

/** Days by which the clocks of two zones can be apart, and one to spare. */
const zonesApart = 2;

function instantOf(time: CalendarTime, window: Window): InstantMinutes {
  const local = time.kind === 'date' ? time.day * minutesADay : time.local;
  return instantAt(window.clockOf(time), local);
}

/** The end of an occurrence that starts at `local`; `exact` is how long the first one lasts. */
function endInstant(
  start: InstantMinutes,
  local: LocalMinutes,
  clock: ZoneClock,
  end: EventEnd | undefined,
  exact: number,
): InstantMinutes {
  if (end?.kind !== 'after') return start + exact;
  const { days, minutes } = end.length;
  return (days === 0 ? start : instantAt(clock, local + days * minutesADay)) + minutes;
}

/** Minutes from the written start to the written end; zero where that would be less, or there is none. */
function exactLength({ start, end }: CalendarEvent, window: Window): number {
  if (end?.kind !== 'at') return 0;
  return Math.max(0, instantOf(end.time, window) - instantOf(start, window));
}

function isBeforeEnd(local: LocalMinutes, clock: ZoneClock, until: CalendarTime | undefined): boolean {
  if (!until) return true;
  if (until.kind === 'date') return Math.floor(local / minutesADay) <= until.day;
  return until.zone === 'utc' ? instantAt(clock, local) <= until.local : local <= until.local;
}

/** A change of all occurrences from one on; the latest such one counts. */
interface LaterChange {
  readonly from: InstantMinutes;
  readonly shift: number;
  readonly length: number;
  readonly event: CalendarEvent;
}

function laterChanges(
  event: CalendarEvent,
  changes: readonly CalendarEvent[],
  window: Window,
): readonly LaterChange[] {
  const clock = window.clockOf(event.start);
  return changes
    .flatMap((change) => {
      if (!change.replacesLater || !change.replaces || change.start.kind === 'date') return [];
      const from = instantOf(change.replaces, window);
      const start = instantOf(change.start, window);
      return [
        {
          from,
          shift: localAt(clock, start) - localAt(clock, from),
          length:
            endInstant(start, change.start.local, clock, change.end, exactLength(change, window)) - start,
          event: change,
        },
      ];
    })
    .sort((a, b) => b.from - a.from);
}

/** An occurrence of an event, on the event's own clock and in real time. */
interface Occurrence {
  readonly local: LocalMinutes;
  readonly end: InstantMinutes;
}

/** Days around a window in which an occurrence may begin that reaches into it. */
interface Reach {
  readonly firstDay: number;
  readonly lastDay: number;
}

function reachOf(event: CalendarEvent, exact: number, later: readonly LaterChange[], window: Window): Reach {
  const nominal = event.end?.kind === 'after' ? event.end.length : { days: 0, minutes: 0 };
  const longest = Math.max(exact, nominal.days * minutesADay + nominal.minutes);
  const moved = Math.max(0, ...later.map(({ shift, length }) => Math.abs(shift) + length));
  return {
    firstDay: window.firstDay - Math.ceil((longest + moved) / minutesADay) - 1,
    lastDay: window.lastDay + Math.ceil(moved / minutesADay) + 1,
  };
}

/** An event at a time of day. */
export function timedSeries(
  event: CalendarEvent,
  first: LocalMinutes,
  changes: readonly CalendarEvent[],
): EventSeries {
  const followed = event.rules.map((rule) => ({ rule, recurrence: recurrence(rule, first) }));
  const left = [...event.excluded, ...changes.flatMap(({ replaces }) => replaces ?? [])];
  const leftDays = new Set(left.flatMap((time) => (time.kind === 'date' ? [time.day] : [])));

  /** Every occurrence that begins within reach, by its start. */
  const occurrencesIn = (reach: Reach, exact: number, window: Window): Map<InstantMinutes, Occurrence> => {
    const clock = window.clockOf(event.start);
    const found = new Map<InstantMinutes, Occurrence>();
    const add = (local: LocalMinutes) => {
      const instant = instantAt(clock, local);
      found.set(instant, { local, end: endInstant(instant, local, clock, event.end, exact) });
    };
    const firstDay = Math.floor(first / minutesADay);
    if (firstDay >= reach.firstDay && firstDay <= reach.lastDay) add(first);
    const days = followed.length === 0 ? [] : window.fields(reach.firstDay, reach.lastDay);
    for (const { rule, recurrence: times } of followed) {
      for (const local of times.on(days)) {
        if (isBeforeEnd(local, clock, rule.until)) add(local);
      }
    }
    for (const { start, end } of event.extra) {
      const instant = instantOf(start, window);
      const local = localAt(clock, instant);
      const own = end?.kind === 'at' ? instantOf(end.time, window) - instant : exact;
      found.set(instant, { local, end: endInstant(instant, local, clock, end ?? event.end, own) });
    }
    return found;
  };

  /** The starts within reach at which the event does not take place as it otherwise would. */
  const leftIn = (reach: Reach, window: Window): ReadonlySet<InstantMinutes> =>
    new Set(
      left
        .filter((time) => {
          const day = dayOf(time);
          return (
            time.kind === 'time' && day >= reach.firstDay - zonesApart && day <= reach.lastDay + zonesApart
          );
        })
        .map((time) => instantOf(time, window)),
    );

  return {
    within(window) {
      const exact = exactLength(event, window);
      const later = laterChanges(event, changes, window);
      const reach = reachOf(event, exact, later, window);
      const leftStarts = leftIn(reach, window);
      const taken: TakenTime[] = [];
      for (const [start, { local, end }] of occurrencesIn(reach, exact, window)) {
        if (leftStarts.has(start) || leftDays.has(Math.floor(local / minutesADay))) continue;
        const change = later.find(({ from }) => from <= start);
        if (!change) {
          if (event.isBusy) taken.push({ kind: 'span', start, end, event });
        } else if (change.event.isBusy) {
          const moved = instantAt(window.clockOf(event.start), local + change.shift);
          taken.push({ kind: 'span', start: moved, end: moved + change.length, event: change.event });
        }
      }
      return taken;
    },
  };
}
