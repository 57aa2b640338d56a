/**
 * Lines, text and values of iCalendar files.
 *
 * Folding, text and dates: the examples of RFC 5545, sections 3.1, 3.3.5, 3.3.6, 3.3.9, 3.3.11, 3.4, 3.6.1 and 3.8.5
 * [R rfc5545.txt].
 */
import assert from 'node:assert/strict';
import { type BusyCalendar, busyBetween, readBusyCalendar } from '../../src/journal/calendar/busy-calendar';
import { contentLines } from '../../src/journal/calendar/content-lines';
import { readProperty, textValue } from '../../src/journal/calendar/property';
import { dayNumber } from '../../src/notation/time/iso-date';
import { date } from '../training/dates';

function textOf(line: string): string {
  const [only] = contentLines(line);
  const property = only && readProperty(only);
  assert(property);
  return textValue(property);
}

function calendarOf(...lines: string[]): string {
  return ['BEGIN:VCALENDAR', 'VERSION:2.0', ...lines, 'END:VCALENDAR', ''].join('\r\n');
}

function eventOf(...lines: string[]): BusyCalendar {
  return readBusyCalendar(calendarOf('BEGIN:VEVENT', 'UID:example', ...lines, 'END:VEVENT'));
}

/** Spans and days of a period, as New York's clock shows them. */
function shown(calendar: BusyCalendar, first: string, last: string): readonly string[] {
  const { spans, days } = busyBetween(
    calendar,
    dayNumber(date(first)),
    dayNumber(date(last)),
    'America/New_York',
  );
  const local = (minutes: number) => new Date(minutes * 60_000).toISOString().slice(0, 16).replace('T', ' ');
  const day = (number: number) => local(number * 1440).slice(0, 10);
  return [
    ...days.map((one) => `${day(one.first)} to ${day(one.last)}`),
    ...spans.map(({ clock }) => `${local(clock.start)} to ${local(clock.end)}`),
  ];
}

describe('iCalendar', () => {
  it('a folded line is one line (3.1) [R]', () => {
    const folded = 'DESCRIPTION:This is a lo\r\n ng description\r\n  that exists on a long line.';
    assert.deepEqual(
      contentLines(folded).map(({ text }) => text),
      ['DESCRIPTION:This is a long description that exists on a long line.'],
    );
    assert.deepEqual(contentLines(folded)[0]?.range, { start: 0, end: folded.length });
  });

  it('a line break in text is written as \\n or \\N (3.3.11) [R]', () => {
    const words = 'Project XYZ Final Review\nConference Room - 3B\nCome Prepared.';
    assert.equal(
      textOf('DESCRIPTION:Project XYZ Final Review\\nConference Room - 3B\\nCome Prepared.'),
      words,
    );
    assert.equal(
      textOf('DESCRIPTION:Project XYZ Final Review\\NConference Room - 3B\\NCome Prepared.'),
      words,
    );
    assert.equal(textOf('SUMMARY:a\\\\nb\\;c\\,d:e"f'), 'a\\nb;c,d:e"f');
  });

  it('the first example of a whole calendar (3.4) [R]', () => {
    const calendar = readBusyCalendar(
      calendarOf(
        'PRODID:-//hacksw/handcal//NONSGML v1.0//EN',
        'BEGIN:VEVENT',
        'UID:19970610T172345Z-AF23B2@example.com',
        'DTSTAMP:19970610T172345Z',
        'DTSTART:19970714T170000Z',
        'DTEND:19970715T040000Z',
        'SUMMARY:Bastille Day Party',
        'END:VEVENT',
      ),
    );
    assert.deepEqual(calendar.problems, []);
    assert.deepEqual(shown(calendar, '1997-07-14', '1997-07-14'), ['1997-07-14 13:00 to 1997-07-15 00:00']);
  });

  it('an event of several days ends on the day before its DTEND (3.6.1) [R]', () => {
    // The standard marks it as transparent as well; here it is to take its days.
    const calendar = eventOf(
      'DTSTART;VALUE=DATE:20070628',
      'DTEND;VALUE=DATE:20070709',
      'SUMMARY:Festival International de Jazz de Montreal',
    );
    assert.deepEqual(shown(calendar, '2007-06-01', '2007-07-31'), ['2007-06-28 to 2007-07-08']);
  });

  it('an event that is marked as transparent takes no time (3.6.1) [R]', () => {
    const calendar = eventOf(
      'DTSTART;VALUE=DATE:19971102',
      'SUMMARY:Our Blissful Anniversary',
      'TRANSP:TRANSPARENT',
      'CLASS:CONFIDENTIAL',
      'CATEGORIES:ANNIVERSARY,PERSONAL,SPECIAL OCCASION',
      'RRULE:FREQ=YEARLY',
    );
    assert.deepEqual(shown(calendar, '1997-11-01', '1998-11-30'), []);
  });

  it('half past eight in New York is written in three ways (3.3.12) [R]', () => {
    for (const start of [
      'DTSTART:19980119T083000',
      'DTSTART:19980119T133000Z',
      'DtStart;TzID=America/New_York:19980119T083000',
    ]) {
      assert.deepEqual(
        shown(eventOf(start, 'DURATION:PT1H'), '1998-01-19', '1998-01-19'),
        ['1998-01-19 08:30 to 1998-01-19 09:30'],
        start,
      );
    }
  });

  it('a time with an offset is none (3.3.5) [R]', () => {
    const calendar = eventOf('DTSTART:19980119T230000-0800');
    assert.deepEqual(
      calendar.problems.map(({ reason, text }) => [reason, text]),
      [['unreadable-time', '19980119T230000-0800']],
    );
  });

  for (const [duration, end] of [
    ['P15DT5H0M20S', '1998-02-03 13:30'],
    ['P7W', '1998-03-09 08:30'],
  ] as const) {
    it(`a length of ${duration} (3.3.6) [R]`, () => {
      const calendar = eventOf('DTSTART;TZID=America/New_York:19980119T083000', `DURATION:${duration}`);
      assert.deepEqual(shown(calendar, '1998-01-19', '1998-01-19'), [`1998-01-19 08:30 to ${end}`]);
    });
  }

  it('days of a length are the calendar’s, hours are real ones (3.3.6), over a clock change', () => {
    const start = 'DTSTART;TZID=America/New_York:20260307T180000';
    assert.deepEqual(shown(eventOf(start, 'DURATION:P1D'), '2026-03-07', '2026-03-07'), [
      '2026-03-07 18:00 to 2026-03-08 18:00',
    ]);
    assert.deepEqual(shown(eventOf(start, 'DURATION:PT24H'), '2026-03-07', '2026-03-07'), [
      '2026-03-07 18:00 to 2026-03-08 19:00',
    ]);
  });

  it('a period of time has an end or a length (3.3.9) [R]', () => {
    const calendar = readBusyCalendar(
      calendarOf(
        'BEGIN:VFREEBUSY',
        'FREEBUSY:19970101T180000Z/19970102T070000Z',
        'FREEBUSY;FBTYPE=BUSY-UNAVAILABLE:19970103T180000Z/PT5H30M',
        'FREEBUSY;FBTYPE=FREE:19970104T180000Z/PT5H30M',
        'END:VFREEBUSY',
      ),
    );
    assert.deepEqual(shown(calendar, '1997-01-01', '1997-01-31'), [
      '1997-01-01 13:00 to 1997-01-02 02:00',
      '1997-01-03 13:00 to 1997-01-03 18:30',
    ]);
  });

  it('an event takes place on its RDATEs as well (3.8.5.2) [R]', () => {
    const calendar = eventOf(
      'DTSTART;TZID=America/New_York:19970701T083000',
      'DURATION:PT1H',
      'RDATE:19970714T123000Z',
      'RDATE;TZID=America/New_York:19970715T083000',
    );
    assert.deepEqual(shown(calendar, '1997-07-01', '1997-07-31'), [
      '1997-07-01 08:30 to 1997-07-01 09:30',
      '1997-07-14 08:30 to 1997-07-14 09:30',
      '1997-07-15 08:30 to 1997-07-15 09:30',
    ]);
    const periods = eventOf(
      'DTSTART:19960402T010000Z',
      'DURATION:PT1H',
      'RDATE;VALUE=PERIOD:19960403T020000Z/19960403T040000Z,',
      ' 19960404T010000Z/PT3H',
    );
    assert.deepEqual(shown(periods, '1996-04-02', '1996-04-30'), [
      '1996-04-02 21:00 to 1996-04-02 23:00',
      '1996-04-03 20:00 to 1996-04-03 23:00',
    ]);
  });

  it('whole days recur on their RDATEs (3.8.5.2) [R]', () => {
    const calendar = eventOf(
      'DTSTART;VALUE=DATE:19970101',
      'RDATE;VALUE=DATE:19970101,19970120,19970217,19970421,',
      ' 19970526,19970704,19970901,19971014,19971128,19971129,19971225',
    );
    assert.deepEqual(shown(calendar, '1997-01-01', '1997-04-30'), [
      '1997-01-01 to 1997-01-01',
      '1997-01-20 to 1997-01-20',
      '1997-02-17 to 1997-02-17',
      '1997-04-21 to 1997-04-21',
    ]);
  });

  it('EXDATE takes single occurrences out (3.8.5.1) [R]', () => {
    const calendar = eventOf(
      'DTSTART:19960401T010000Z',
      'DURATION:PT1H',
      'RRULE:FREQ=DAILY;COUNT=5',
      'EXDATE:19960402T010000Z,19960403T010000Z,19960404T010000Z',
    );
    assert.deepEqual(shown(calendar, '1996-03-31', '1996-04-30'), [
      '1996-03-31 20:00 to 1996-03-31 21:00',
      '1996-04-04 20:00 to 1996-04-04 21:00',
    ]);
  });
});
