import { isKnownZone } from '../../notation/time/zoned-time';
import type { CalendarProblem } from './calendar-problem';
import type { CalendarComponent } from './component';
import { observanceClock, readObservances } from './observances';
import { propertyName, readProperty, textValue } from './property';
import { zoneOfWindowsName } from './windows-zones';
import { namedClock, type ZoneClock } from './zone-clock';

/** The clocks of a calendar file by the names that its times give them. */
export interface ZoneClocks {
  /** `undefined` for a zone that neither the file nor this machine knows. */
  clockOf(name: string): ZoneClock | undefined;
}

function nameOf(zone: CalendarComponent): string | undefined {
  const line = zone.lines.find((one) => propertyName(one) === 'tzid');
  const property = line && readProperty(line);
  return property && textValue(property);
}

/**
 * The tzdb name that a file means: the name itself, the end of one with a maker's path before it
 * (`/example.org/Europe/Lisbon`), or that of a zone of Windows.
 */
export function zoneNamed(name: string): string | undefined {
  const parts = name.split('/');
  const endings = parts.slice(0, -1).map((_, index) => parts.slice(index).join('/'));
  return [name, ...endings, zoneOfWindowsName(name)].find((one) => one !== undefined && isKnownZone(one));
}

/**
 * The zones that the calendars of a file define (RFC 5545, section 3.6.5), and those that this machine knows by
 * name. What a file defines comes first.
 */
export function readZoneClocks(calendars: readonly CalendarComponent[]): {
  readonly clocks: ZoneClocks;
  readonly problems: readonly CalendarProblem[];
} {
  const known = new Map<string, ZoneClock | undefined>();
  const problems: CalendarProblem[] = [];
  for (const zone of calendars.flatMap(({ parts }) => parts).filter(({ name }) => name === 'VTIMEZONE')) {
    const name = nameOf(zone);
    const observances = readObservances(zone);
    if (name !== undefined && observances !== undefined) known.set(name, observanceClock(observances));
    else problems.push({ reason: 'unreadable-zone', range: zone.begin.range, text: name ?? '' });
  }
  return {
    problems,
    clocks: {
      clockOf(name) {
        if (!known.has(name)) {
          const zone = zoneNamed(name);
          known.set(name, zone === undefined ? undefined : namedClock(zone));
        }
        return known.get(name);
      },
    },
  };
}
