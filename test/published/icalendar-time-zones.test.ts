/**
 * Time zones in iCalendar files.
 *
 * Definitions of zones: the examples of RFC 5545, section 3.6.5, New York since 1967 and two fictitious zones, and the
 * zone of the calendar in section 4 [R rfc5545.txt]. What they must say is read off the same pages; the offsets
 * of New York are compared with those of the IANA time zone database as this machine has it [C].
 *
 * Times that a clock change skips or shows twice: RFC 5545, section 3.3.5 [R].
 *
 * Names that Windows gives to zones: compared with the table of another library, made from Unicode CLDR [C].
 */
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { busyBetween, readBusyCalendar } from '../../src/journal/calendar/busy-calendar';
import { readComponents } from '../../src/journal/calendar/component';
import { contentLines } from '../../src/journal/calendar/content-lines';
import { readZoneClocks, zoneNamed } from '../../src/journal/calendar/time-zones';
import { zoneOfWindowsName } from '../../src/journal/calendar/windows-zones';
import { instantAt, namedClock, type ZoneClock } from '../../src/journal/calendar/zone-clock';
import { instantOf, isKnownZone } from '../../src/notation/time/zoned-time';
import { date } from '../training/dates';

/** Minutes since 1970 of an instant, or of what a clock shows when it is written without `Z`. */
function minutes(text: string): number {
  return Date.parse(text.endsWith('Z') ? text : `${text}Z`) / 60_000;
}

function part(
  name: 'STANDARD' | 'DAYLIGHT',
  from: string,
  to: string,
  ...lines: string[]
): readonly string[] {
  return [`BEGIN:${name}`, ...lines, `TZOFFSETFROM:${from}`, `TZOFFSETTO:${to}`, `END:${name}`];
}

function zoneText(name: string, ...parts: (readonly string[])[]): readonly string[] {
  return ['BEGIN:VTIMEZONE', `TZID:${name}`, ...parts.flat(), 'END:VTIMEZONE'];
}

function clockIn(name: string, text: readonly string[]): ZoneClock {
  const { calendars } = readComponents(
    contentLines(['BEGIN:VCALENDAR', ...text, 'END:VCALENDAR'].join('\r\n')),
  );
  const { clocks, problems } = readZoneClocks(calendars);
  assert.deepEqual(problems, []);
  const clock = clocks.clockOf(name);
  assert(clock);
  return clock;
}

const newYorkSince1967 = zoneText(
  'Since1967',
  part(
    'DAYLIGHT',
    '-0500',
    '-0400',
    'DTSTART:19670430T020000',
    'RRULE:FREQ=YEARLY;BYMONTH=4;BYDAY=-1SU;UNTIL=19730429T070000Z',
  ),
  part(
    'STANDARD',
    '-0400',
    '-0500',
    'DTSTART:19671029T020000',
    'RRULE:FREQ=YEARLY;BYMONTH=10;BYDAY=-1SU;UNTIL=20061029T060000Z',
  ),
  part('DAYLIGHT', '-0500', '-0400', 'DTSTART:19740106T020000', 'RDATE:19750223T020000'),
  part(
    'DAYLIGHT',
    '-0500',
    '-0400',
    'DTSTART:19760425T020000',
    'RRULE:FREQ=YEARLY;BYMONTH=4;BYDAY=-1SU;UNTIL=19860427T070000Z',
  ),
  part(
    'DAYLIGHT',
    '-0500',
    '-0400',
    'DTSTART:19870405T020000',
    'RRULE:FREQ=YEARLY;BYMONTH=4;BYDAY=1SU;UNTIL=20060402T070000Z',
  ),
  part('DAYLIGHT', '-0500', '-0400', 'DTSTART:20070311T020000', 'RRULE:FREQ=YEARLY;BYMONTH=3;BYDAY=2SU'),
  part('STANDARD', '-0400', '-0500', 'DTSTART:20071104T020000', 'RRULE:FREQ=YEARLY;BYMONTH=11;BYDAY=1SU'),
);

const fictitiousWinter = part(
  'STANDARD',
  '-0400',
  '-0500',
  'DTSTART:19671029T020000',
  'RRULE:FREQ=YEARLY;BYDAY=-1SU;BYMONTH=10',
);
const fictitiousSummer = part(
  'DAYLIGHT',
  '-0500',
  '-0400',
  'DTSTART:19870405T020000',
  'RRULE:FREQ=YEARLY;BYDAY=1SU;BYMONTH=4;UNTIL=19980404T070000Z',
);
const fictitiousLaterSummer = part(
  'DAYLIGHT',
  '-0500',
  '-0400',
  'DTSTART:19990424T020000',
  'RRULE:FREQ=YEARLY;BYDAY=-1SU;BYMONTH=4',
);

describe('time zones of iCalendar files', () => {
  describe('New York since 1967 (RFC 5545, 3.6.5) [R]', () => {
    const clock = clockIn('Since1967', newYorkSince1967);

    it('is at every hour where the time zone database has it [C]', () => {
      const known = namedClock('America/New_York');
      for (
        let instant = minutes('1967-05-01T00:00Z');
        instant < minutes('2030-01-01T00:00Z');
        instant += 17 * 60
      ) {
        assert.equal(
          clock.offsetAt(instant),
          known.offsetAt(instant),
          new Date(instant * 60_000).toISOString(),
        );
      }
    });

    for (const [local, instant, what] of [
      ['2007-11-04T01:30', '2007-11-04T05:30Z', 'shown twice: the first of the two, EDT'],
      ['2007-03-11T02:30', '2007-03-11T07:30Z', 'not shown: with the offset before the gap, EST'],
      ['2007-03-11T01:59', '2007-03-11T06:59Z', 'the last minute of EST'],
      ['2007-03-11T03:00', '2007-03-11T07:00Z', 'the first minute of EDT'],
      ['2007-11-04T02:00', '2007-11-04T07:00Z', 'behind the hour that is shown twice'],
    ] as const) {
      it(`${local}, ${what}, is ${instant} (3.3.5)`, () => {
        assert.equal(instantAt(clock, minutes(local)), minutes(instant));
      });
    }
  });

  it('is told by single dates alone: New York from March 2007 to March 2008 (3.6.5) [R]', () => {
    const clock = clockIn(
      'Short',
      zoneText(
        'Short',
        part('STANDARD', '-0400', '-0500', 'DTSTART:20071104T020000'),
        part('DAYLIGHT', '-0500', '-0400', 'DTSTART:20070311T020000'),
      ),
    );
    // The example's own event: every Friday at 8 from June 1 to December 31, 2007.
    assert.equal(instantAt(clock, minutes('2007-06-01T08:00')), minutes('2007-06-01T12:00Z'));
    assert.equal(instantAt(clock, minutes('2007-12-28T08:00')), minutes('2007-12-28T13:00Z'));
    assert.equal(clock.offsetAt(minutes('2008-03-09T06:59Z')), -300);
  });

  it('has no summer time any more behind its end: the first fictitious zone (3.6.5) [R]', () => {
    const clock = clockIn('Fictitious', zoneText('Fictitious', fictitiousWinter, fictitiousSummer));
    assert.equal(clock.offsetAt(minutes('1997-07-01T12:00Z')), -240);
    assert.equal(clock.offsetAt(minutes('1998-07-01T12:00Z')), -300);
    assert.equal(clock.offsetAt(minutes('2026-07-01T12:00Z')), -300);
  });

  it('goes on with a second summer time: the other fictitious zone (3.6.5) [R]', () => {
    const clock = clockIn(
      'Fictitious',
      zoneText('Fictitious', fictitiousWinter, fictitiousSummer, fictitiousLaterSummer),
    );
    assert.equal(clock.offsetAt(minutes('1998-07-01T12:00Z')), -300);
    // It begins on Saturday, April 24, 1999, and then on each last Sunday of April.
    assert.equal(clock.offsetAt(minutes('1999-04-24T07:00Z')), -240);
    assert.equal(clock.offsetAt(minutes('2000-04-30T06:59Z')), -300);
    assert.equal(clock.offsetAt(minutes('2000-04-30T07:00Z')), -240);
  });

  it('counts in the calendar that defines it, whatever the name means elsewhere (section 4) [R]', () => {
    const calendar = readBusyCalendar(
      [
        'BEGIN:VCALENDAR',
        'PRODID:-//RDU Software//NONSGML HandCal//EN',
        'VERSION:2.0',
        ...zoneText(
          // Under this name the machine knows another clock.
          'Asia/Tokyo',
          part('STANDARD', '-0400', '-0500', 'DTSTART:19981025T020000'),
          part('DAYLIGHT', '-0500', '-0400', 'DTSTART:19990404T020000'),
        ),
        'BEGIN:VEVENT',
        'DTSTAMP:19980309T231000Z',
        'UID:guid-1.example.com',
        'DTSTART;TZID=Asia/Tokyo:19990704T083000',
        'DTEND;TZID=Asia/Tokyo:19990704T093000',
        'END:VEVENT',
        'END:VCALENDAR',
      ].join('\r\n'),
    );
    const { spans } = busyBetween(
      calendar,
      minutes('1998-01-01') / 1440,
      minutes('2000-01-01') / 1440,
      'UTC',
    );
    assert.deepEqual(
      spans.map(({ start }) => start),
      [minutes('1999-07-04T12:30Z')],
    );
  });

  describe('a zone by name', () => {
    for (const zone of [
      'Europe/London',
      'Europe/Dublin',
      'America/Sao_Paulo',
      'Australia/Lord_Howe',
      'Africa/Casablanca',
      'Africa/Cairo',
      'Pacific/Apia',
      'Asia/Kathmandu',
    ]) {
      it(`${zone}: every quarter of an hour around midnight and at night is the instant of the notes [C]`, () => {
        const clock = namedClock(zone);
        for (const year of [2011, 2018, 2026]) {
          for (
            let day = minutes(`${year}-01-01T00:00`);
            day < minutes(`${year + 1}-01-01T00:00`);
            day += 1440
          ) {
            for (const time of [0, 30, 60, 90, 105, 120, 150, 180, 1425]) {
              const text = new Date(day * 60_000).toISOString().slice(0, 10);
              assert.equal(
                instantAt(clock, day + time),
                instantOf(date(text), time, zone),
                `${text} ${time}`,
              );
            }
          }
        }
      }).timeout(20_000);
    }

    it('may stand behind the path of whoever made the file', () => {
      assert.equal(zoneNamed('/example.org/20260101_1/Europe/Lisbon'), 'Europe/Lisbon');
      assert.equal(
        zoneNamed('/example.org/America/Argentina/Buenos_Aires'),
        'America/Argentina/Buenos_Aires',
      );
      assert.equal(zoneNamed('Customized Time Zone'), undefined);
      assert.equal(zoneNamed('/example.org/Nowhere/Land'), undefined);
    });
  });

  describe('names of Windows', () => {
    const table = JSON.parse(
      readFileSync(join(process.cwd(), 'node_modules/node-ical/windowsZones.json'), 'utf8'),
    ) as Readonly<Record<string, { readonly iana: readonly string[] }>>;
    const ours = Object.keys(table).filter((name) => zoneOfWindowsName(name) !== undefined);

    it('are the common ones', () => {
      assert(ours.length > 45, `${ours.length} names`);
    });

    it('mean what the table of CLDR says, or a zone that keeps the same time [C]', () => {
      for (const name of ours) {
        const zone = zoneOfWindowsName(name) ?? '';
        assert(isKnownZone(zone), zone);
        const theirs = table[name]?.iana ?? [];
        assert(
          theirs.some((other) =>
            ['2026-01-15T12:00Z', '2026-07-15T12:00Z'].every(
              (instant) =>
                namedClock(zone).offsetAt(minutes(instant)) === namedClock(other).offsetAt(minutes(instant)),
            ),
          ),
          `${name}: ${zone}, not ${theirs}`,
        );
      }
    });
  });
});
