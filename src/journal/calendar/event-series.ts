import type { CalendarEvent } from './calendar-event';
import { dateSeries } from './date-series';
import type { EventSeries } from './taken-time';
import { timedSeries } from './timed-series';

function seriesOf(event: CalendarEvent, changes: readonly CalendarEvent[]): EventSeries {
  return event.start.kind === 'time'
    ? timedSeries(event, event.start.local, changes)
    : dateSeries(event, changes);
}

/** Of several revisions of one thing the newest; of equals the one that stands last in the file. */
function newestByName(
  events: readonly CalendarEvent[],
  nameOf: (event: CalendarEvent) => string | undefined,
): readonly CalendarEvent[] {
  const named = new Map<string, CalendarEvent>();
  const nameless: CalendarEvent[] = [];
  for (const event of events) {
    const name = nameOf(event);
    const before = name === undefined ? undefined : named.get(name);
    if (name === undefined) nameless.push(event);
    else if (!before || before.revision <= event.revision) named.set(name, event);
  }
  return [...nameless, ...named.values()];
}

/** The events of a file as series: those with one identifier belong together. */
export function eventSeries(events: readonly CalendarEvent[]): readonly EventSeries[] {
  const masters = newestByName(
    events.filter(({ replaces }) => !replaces),
    ({ uid }) => uid,
  );
  const changes = newestByName(
    events.filter(({ replaces }) => replaces),
    ({ uid, replaces }) => (uid === undefined ? undefined : `${JSON.stringify(replaces)} ${uid}`),
  );
  const changesOf = new Map<string, CalendarEvent[]>();
  for (const change of changes) {
    if (change.uid === undefined) continue;
    const others = changesOf.get(change.uid);
    if (others) others.push(change);
    else changesOf.set(change.uid, [change]);
  }
  return [
    ...masters.map((event) =>
      seriesOf(event, event.uid === undefined ? [] : (changesOf.get(event.uid) ?? [])),
    ),
    // What stands in place of an occurrence stands by itself; without its series as well.
    ...changes.map((event) => seriesOf({ ...event, rules: [], extra: [], excluded: [] }, [])),
  ];
}
