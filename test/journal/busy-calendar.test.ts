import assert from 'node:assert/strict';
import fc from 'fast-check';
import { type BusyCalendar, busyBetween, readBusyCalendar } from '../../src/journal/calendar/busy-calendar';
import { isOwnUid, ownUid } from '../../src/journal/calendar/own-events';
import { day } from './index-of';

/** A calendar of these lines, ended as the standard asks. */
function calendarText(...lines: string[]): string {
  return ['BEGIN:VCALENDAR', 'VERSION:2.0', ...lines, 'END:VCALENDAR', ''].join('\r\n');
}

function event(...lines: string[]): readonly string[] {
  return ['BEGIN:VEVENT', ...lines, 'END:VEVENT'];
}

function read(...lines: string[]): BusyCalendar {
  return readBusyCalendar(calendarText(...lines));
}

function shown(local: number): string {
  return new Date(local * 60_000).toISOString().slice(0, 16).replace('T', ' ');
}

/** What is busy, as the clock of `zone` shows it; whole days first. */
function busy(
  calendar: BusyCalendar,
  first: string,
  last: string,
  zone = 'Europe/Lisbon',
): readonly string[] {
  const { spans, days } = busyBetween(calendar, day(first), day(last), zone);
  return [
    ...days.map((one) => `${shown(one.first * 1440).slice(0, 10)} to ${shown(one.last * 1440).slice(0, 10)}`),
    ...spans.map(({ clock }) => `${shown(clock.start)} to ${shown(clock.end).slice(11)}`),
  ];
}

/** Problems as `line: reason text`, lines from 1. */
function problems(text: string): readonly string[] {
  return readBusyCalendar(text).problems.map(({ reason, range, text: word }) =>
    `${text.slice(0, range.start).split(/\r\n|\n|\r/).length}: ${reason} ${word}`.trim(),
  );
}

const march2 = event('UID:a', 'DTSTART:20260302T090000', 'DTEND:20260302T170000', 'SUMMARY:Early shift');

describe('busy times of a calendar file', () => {
  it('are told on the clock of the zone that is asked for', () => {
    const calendar = read(
      ...event(
        'UID:a',
        'DTSTART;TZID=Europe/Berlin:20260302T090000',
        'DTEND;TZID=Europe/Berlin:20260302T100000',
      ),
    );
    assert.deepEqual(busy(calendar, '2026-03-02', '2026-03-02', 'Europe/Berlin'), [
      '2026-03-02 09:00 to 10:00',
    ]);
    assert.deepEqual(busy(calendar, '2026-03-02', '2026-03-02', 'Europe/Lisbon'), [
      '2026-03-02 08:00 to 09:00',
    ]);
    assert.deepEqual(busy(calendar, '2026-03-02', '2026-03-02', 'Asia/Kathmandu'), [
      '2026-03-02 13:45 to 14:45',
    ]);
  });

  it('without a zone stand on whatever clock is asked for', () => {
    for (const zone of ['Europe/Lisbon', 'Asia/Tokyo'])
      assert.deepEqual(busy(read(...march2), '2026-03-02', '2026-03-02', zone), [
        '2026-03-02 09:00 to 17:00',
      ]);
  });

  it('keep their place on the clock over its changes, and shift on another', () => {
    const calendar = read(
      ...event(
        'UID:a',
        'DTSTART;TZID=America/New_York:20260305T120000',
        'DURATION:PT1H',
        'RRULE:FREQ=WEEKLY',
      ),
    );
    // New York changes on 8 March, Lisbon on 29 March.
    assert.deepEqual(busy(calendar, '2026-03-05', '2026-04-02'), [
      '2026-03-05 17:00 to 18:00',
      '2026-03-12 16:00 to 17:00',
      '2026-03-19 16:00 to 17:00',
      '2026-03-26 16:00 to 17:00',
      '2026-04-02 17:00 to 18:00',
    ]);
  });

  it('reach over midnight and into the period that is asked for', () => {
    const calendar = read(...event('UID:a', 'DTSTART:20260302T220000', 'DTEND:20260303T060000'));
    assert.deepEqual(busy(calendar, '2026-03-03', '2026-03-03'), ['2026-03-02 22:00 to 06:00']);
    assert.deepEqual(busy(calendar, '2026-03-04', '2026-03-04'), []);
  });

  it('are each told once, wherever the period begins', () => {
    const nights = read(
      ...event('UID:a', 'DTSTART:20260101T220000', 'DURATION:PT8H', 'RRULE:FREQ=DAILY;COUNT=140'),
      ...event('UID:b', 'DTSTART;VALUE=DATE:20260120', 'DTEND;VALUE=DATE:20260305'),
    );
    for (let length = 0; length < 70; length += 1) {
      const from = day('2026-01-15') + length;
      const { spans, days } = busyBetween(nights, from, from + 40, 'UTC');
      assert.equal(new Set(spans.map(({ start }) => start)).size, spans.length);
      assert.equal(spans.length, 42);
      assert.equal(days.length, from <= day('2026-03-04') ? 1 : 0);
    }
  });

  it('leave out what takes no time', () => {
    const calendar = read(
      ...event('UID:a', 'DTSTART:20260302T090000', 'DTEND:20260302T100000', 'STATUS:CANCELLED'),
      ...event('UID:b', 'DTSTART:20260302T110000', 'DTEND:20260302T120000', 'TRANSP:TRANSPARENT'),
      ...event('UID:c', 'DTSTART:20260302T130000'),
      ...event('UID:d', 'DTSTART:20260302T140000', 'DTEND:20260302T150000', 'STATUS:TENTATIVE'),
      ...['BEGIN:VTODO', 'UID:e', 'DTSTART:20260302T160000', 'DUE:20260302T170000', 'END:VTODO'],
    );
    assert.deepEqual(busy(calendar, '2026-03-02', '2026-03-02'), ['2026-03-02 14:00 to 15:00']);
    assert.deepEqual(calendar.problems, []);
  });

  it('leave out the events that this program has exported', () => {
    const calendar = read(
      ...event(`UID:${ownUid('20260302-flexibility-1')}`, 'DTSTART:20260302T183000', 'DURATION:PT75M'),
      ...march2,
    );
    assert.deepEqual(busy(calendar, '2026-03-02', '2026-03-02'), ['2026-03-02 09:00 to 17:00']);
    assert.equal(isOwnUid('20260302-flexibility-1'), false);
  });

  it('follow changes of single occurrences, and of one and all later ones', () => {
    const calendar = read(
      ...event(
        'UID:a',
        'DTSTART;TZID=Europe/Lisbon:20260302T090000',
        'DTEND;TZID=Europe/Lisbon:20260302T100000',
        'RRULE:FREQ=WEEKLY',
      ),
      ...event(
        'UID:a',
        'RECURRENCE-ID;TZID=Europe/Lisbon:20260309T090000',
        'DTSTART;TZID=Europe/Lisbon:20260310T120000',
        'DTEND;TZID=Europe/Lisbon:20260310T123000',
      ),
      ...event(
        'UID:a',
        'RECURRENCE-ID;TZID=Europe/Lisbon:20260316T090000',
        'DTSTART;TZID=Europe/Lisbon:20260316T090000',
        'STATUS:CANCELLED',
      ),
      ...event(
        'UID:a',
        'RECURRENCE-ID;RANGE=THISANDFUTURE;TZID=Europe/Lisbon:20260330T090000',
        'DTSTART;TZID=Europe/Lisbon:20260331T150000',
        'DTEND;TZID=Europe/Lisbon:20260331T163000',
      ),
    );
    assert.deepEqual(calendar.problems, []);
    assert.deepEqual(busy(calendar, '2026-03-01', '2026-04-14'), [
      '2026-03-02 09:00 to 10:00',
      '2026-03-10 12:00 to 12:30',
      '2026-03-23 09:00 to 10:00',
      '2026-03-31 15:00 to 16:30',
      '2026-04-07 15:00 to 16:30',
      '2026-04-14 15:00 to 16:30',
    ]);
  });

  it('follow changes of whole days in the same way', () => {
    const calendar = read(
      ...event('UID:a', 'DTSTART;VALUE=DATE:20260302', 'RRULE:FREQ=WEEKLY', 'EXDATE;VALUE=DATE:20260309'),
      ...event('UID:a', 'RECURRENCE-ID;VALUE=DATE:20260316', 'DTSTART;VALUE=DATE:20260317'),
      ...event(
        'UID:a',
        'RECURRENCE-ID;RANGE=THISANDFUTURE;VALUE=DATE:20260330',
        'DTSTART;VALUE=DATE:20260401',
        'DTEND;VALUE=DATE:20260403',
      ),
    );
    assert.deepEqual(busy(calendar, '2026-03-01', '2026-04-09'), [
      '2026-03-02 to 2026-03-02',
      '2026-03-17 to 2026-03-17',
      '2026-03-23 to 2026-03-23',
      '2026-04-01 to 2026-04-02',
      '2026-04-08 to 2026-04-09',
    ]);
  });

  it('count the newest of several revisions of one event', () => {
    const calendar = read(
      ...event('UID:a', 'SEQUENCE:1', 'DTSTART:20260302T110000', 'DURATION:PT1H'),
      ...event('UID:a', 'SEQUENCE:0', 'DTSTART:20260302T090000', 'DURATION:PT1H'),
    );
    assert.deepEqual(busy(calendar, '2026-03-02', '2026-03-02'), ['2026-03-02 11:00 to 12:00']);
  });

  it('of a changed occurrence stand without its series, as some programs export it', () => {
    const calendar = read(
      ...event('UID:a', 'RECURRENCE-ID:20260302T090000Z', 'DTSTART:20260302T110000Z', 'DURATION:PT1H'),
    );
    assert.deepEqual(busy(calendar, '2026-03-02', '2026-03-02'), ['2026-03-02 11:00 to 12:00']);
  });

  it('mind an end of a series that is a date where a time is asked', () => {
    const calendar = read(
      ...event('UID:a', 'DTSTART:20260302T090000', 'DURATION:PT1H', 'RRULE:FREQ=DAILY;UNTIL=20260304'),
    );
    assert.equal(busy(calendar, '2026-03-01', '2026-03-31').length, 3);
  });

  it('are the same with bare line feeds, tabs in folds, small letters and empty lines', () => {
    const text =
      'begin:vcalendar\n\nbegin:vevent\nuid:a\nsummary:Ear\n\tly shift\ndtstart:20260302T090000\ndtend:20260302T170000\nend:vevent\nend:vcalendar';
    const calendar = readBusyCalendar(text);
    assert.deepEqual(calendar.problems, []);
    assert.deepEqual(busy(calendar, '2026-03-02', '2026-03-02'), ['2026-03-02 09:00 to 17:00']);
    assert.equal(
      busyBetween(calendar, day('2026-03-02'), day('2026-03-02'), 'UTC').spans[0]?.event.summary,
      'Early shift',
    );
  });

  describe('of a file with something wrong in it', () => {
    it('tell the line, and count all else', () => {
      const text = calendarText(
        ...event('UID:a', 'DTSTART:20260230T090000', 'DTEND:20260302T170000'),
        ...event('UID:b', 'SUMMARY:No start'),
        ...event('UID:c', 'DTSTART:20260302T090000', 'DURATION:an hour'),
        ...event('UID:d', 'DTSTART:20260302T100000', 'DURATION:PT1H', 'RRULE:FREQ=FORTNIGHTLY'),
        ...event('UID:e', 'DTSTART:20260302T120000', 'DTEND:20260302T110000', 'SUMMARY:Backwards'),
        ...event('UID:f', 'this is no property', 'DTSTART:20260302T130000', 'DURATION:PT1H'),
        ...event('UID:g', 'DTSTART;TZID="Europe/Lisbon:20260302T140000', 'DURATION:PT1H'),
        ...event('UID:h', 'DTSTART:20260302T150000', 'DURATION:PT1H', 'EXDATE:tomorrow,20260303T150000'),
      );
      assert.deepEqual(
        problems(text),
        [
          '5: unreadable-time 20260230T090000',
          '8: missing-start VEVENT',
          '15: unreadable-length an hour',
          '21: unreadable-rule FREQ=FORTNIGHTLY',
          '27: ends-before-start Backwards',
          '31: unreadable-line this is no property',
          '37: unreadable-line DTSTART;TZID="Europe/Lisbon:20260302T140',
          '35: missing-start VEVENT',
          '44: unreadable-time tomorrow,20260303T150000',
        ].sort((a, b) => Number(a.split(':')[0]) - Number(b.split(':')[0])),
      );
      assert.deepEqual(busy(readBusyCalendar(text), '2026-03-02', '2026-03-03'), [
        '2026-03-02 10:00 to 11:00',
        '2026-03-02 13:00 to 14:00',
        '2026-03-02 15:00 to 16:00',
      ]);
    });

    it('are told on the clock that is looked at where the zone is unknown, with a warning for each zone', () => {
      const text = calendarText(
        ...event('UID:a', 'DTSTART;TZID=Customized Time Zone:20260302T090000', 'DURATION:PT1H'),
        ...event('UID:b', 'DTSTART;TZID=Customized Time Zone:20260303T090000', 'DURATION:PT1H'),
        ...event('UID:c', 'DTSTART;TZID=W. Europe Standard Time:20260304T090000', 'DURATION:PT1H'),
        ...event('UID:d', 'DTSTART;TZID=Nowhere:20260305T090000Z', 'DURATION:PT1H'),
      );
      assert.deepEqual(problems(text), ['5: unknown-zone Customized Time Zone']);
      assert.deepEqual(busy(readBusyCalendar(text), '2026-03-02', '2026-03-05'), [
        '2026-03-02 09:00 to 10:00',
        '2026-03-03 09:00 to 10:00',
        '2026-03-04 08:00 to 09:00',
        '2026-03-05 09:00 to 10:00',
      ]);
    });

    it('fall back on the name of a zone that is defined badly', () => {
      const text = calendarText(
        'BEGIN:VTIMEZONE',
        'TZID:Europe/Berlin',
        'END:VTIMEZONE',
        ...event('UID:a', 'DTSTART;TZID=Europe/Berlin:20260302T090000', 'DURATION:PT1H'),
      );
      assert.deepEqual(problems(text), ['3: unreadable-zone Europe/Berlin']);
      assert.deepEqual(busy(readBusyCalendar(text), '2026-03-02', '2026-03-02'), [
        '2026-03-02 08:00 to 09:00',
      ]);
    });

    it('count events that are not ended, and do not mind ends of nothing', () => {
      const text = [
        'BEGIN:VCALENDAR',
        'BEGIN:VEVENT',
        'UID:a',
        'DTSTART:20260302T090000',
        'DURATION:PT1H',
        'BEGIN:VEVENT',
        'UID:b',
        'DTSTART:20260302T110000',
        'DURATION:PT1H',
        'END:VEVENT',
        'END:VEVENT',
        'BEGIN:VEVENT',
        'UID:c',
        'DTSTART:20260302T130000',
        'DURATION:PT1H',
      ].join('\r\n');
      assert.deepEqual(problems(text), [
        '1: not-ended VCALENDAR',
        '2: not-ended VEVENT',
        '11: not-begun VEVENT',
        '12: not-ended VEVENT',
      ]);
      assert.equal(busy(readBusyCalendar(text), '2026-03-02', '2026-03-02').length, 3);
    });

    it('are none, with one problem on the first line, when it is no calendar', () => {
      assert.deepEqual(problems('<html>\r\n<body>Sign in</body>'), ['1: not-a-calendar']);
      assert.deepEqual(problems(''), ['1: not-a-calendar']);
      assert.deepEqual(problems('BEGIN:VCARD\r\nEND:VCARD'), ['1: not-a-calendar']);
    });
  });

  it('of a rule that nothing satisfies, or that began long ago, cost no more than any other', () => {
    const calendar = read(
      ...event(
        'UID:a',
        'DTSTART:20200101T090000',
        'DURATION:PT1H',
        'RRULE:FREQ=DAILY;BYMONTH=2;BYMONTHDAY=30',
      ),
      ...event('UID:b', 'DTSTART:16010101T090000', 'DURATION:PT1H', 'RRULE:FREQ=WEEKLY;BYDAY=MO'),
    );
    assert.deepEqual(busy(calendar, '2026-03-01', '2026-03-07'), ['2026-03-02 09:00 to 10:00']);
  });

  it('any text is read without an error', () => {
    const piece = fc.constantFrom(
      'BEGIN:VCALENDAR',
      'END:VCALENDAR',
      'BEGIN:VEVENT',
      'END:VEVENT',
      'BEGIN:VTIMEZONE',
      'END:VTIMEZONE',
      'BEGIN:STANDARD',
      'END:STANDARD',
      'TZID:Own',
      'TZOFFSETFROM:+0100',
      'TZOFFSETTO:+9999',
      'UID:a',
      'RECURRENCE-ID;RANGE=THISANDFUTURE:20260302T090000',
      'DTSTART:20260302T090000',
      'DTSTART;TZID=Own:00010101T000000',
      'DTSTART;VALUE=DATE:99991231',
      'DTEND:20260303T090000Z',
      'DURATION:P9999999W',
      'RRULE:FREQ=SECONDLY;INTERVAL=7200',
      'RRULE:FREQ=YEARLY;COUNT=3;BYWEEKNO=-53',
      'RRULE:FREQ=',
      'RDATE;VALUE=PERIOD:20260302T090000/PT',
      'EXDATE:',
      ' folded',
      ':',
      ';;=:',
    );
    fc.assert(
      fc.property(
        fc.array(fc.oneof({ weight: 6, arbitrary: piece }, { weight: 1, arbitrary: fc.string() }), {
          maxLength: 30,
        }),
        (lines) => {
          const text = lines.join('\r\n');
          const calendar = readBusyCalendar(text);
          for (const { range } of calendar.problems)
            assert(0 <= range.start && range.start <= range.end && range.end <= text.length);
          for (const { start, end } of busyBetween(calendar, day('2026-03-01'), day('2026-03-20'), 'UTC')
            .spans)
            assert(start < end);
        },
      ),
      { seed: 20260303, numRuns: 500 },
    );
  }).timeout(20_000);
});
