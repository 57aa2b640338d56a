import assert from 'node:assert/strict';
import fc from 'fast-check';
import { describe, it } from 'mocha';
import { busyBetween, readBusyCalendar } from '../../src/journal/calendar/busy-calendar';
import { dayNumber, type IsoDate } from '../../src/notation/time/iso-date';
import { anyText } from './any-text';
import { fuzzRuns, fuzzTimeout } from './fuzz-runs';

const pieces = [
  ...[
    'BEGIN:VCALENDAR\r\n',
    'END:VCALENDAR\r\n',
    'BEGIN:VEVENT\r\n',
    'END:VEVENT\r\n',
    'BEGIN:VTIMEZONE\r\n',
  ],
  ...[
    'END:VTIMEZONE\r\n',
    'BEGIN:STANDARD\r\n',
    'END:STANDARD\r\n',
    'TZID:Europe/Berlin\r\n',
    'TZID:Nowhere\r\n',
  ],
  ...['DTSTART:20260224T183000\r\n', 'DTSTART:20260224T183000Z\r\n', 'DTSTART;VALUE=DATE:20260224\r\n'],
  ...[
    'DTSTART;TZID=Europe/Berlin:20260329T023000\r\n',
    'DTSTART;TZID=',
    ':20260224T18',
    'DTEND:20260224T200000\r\n',
  ],
  ...[
    'DTEND:20250224T200000\r\n',
    'DURATION:PT90M\r\n',
    'DURATION:P1W\r\n',
    'DURATION:-PT1H\r\n',
    'DURATION:PX\r\n',
  ],
  ...['RRULE:FREQ=WEEKLY\r\n', 'RRULE:FREQ=DAILY;COUNT=3\r\n', 'RRULE:FREQ=MONTHLY;BYDAY=-1SU\r\n', 'RRULE:'],
  ...[
    'FREQ=YEARLY;BYMONTH=2;BYMONTHDAY=30\r\n',
    'FREQ=SECONDLY\r\n',
    'INTERVAL=0;',
    'UNTIL=20260301;',
    'BYSETPOS=2;',
  ],
  ...[
    'EXDATE:20260303T183000\r\n',
    'RDATE:20260305T183000\r\n',
    'RECURRENCE-ID:20260303T183000\r\n',
    'UID:a\r\n',
  ],
  ...[
    'STATUS:CANCELLED\r\n',
    'TRANSP:TRANSPARENT\r\n',
    'SUMMARY:Early shift\r\n',
    ' folded\r\n',
    ';',
    ':',
    ',',
    '"',
    '=\r\n',
  ],
  ...[
    'TZOFFSETFROM:+0100\r\n',
    'TZOFFSETTO:+9999\r\n',
    'SEQUENCE:1\r\n',
    'BEGIN:VFREEBUSY\r\n',
    'END:VFREEBUSY\r\n',
  ],
  ...['FREEBUSY:20260224T180000Z/PT1H\r\n'],
];

const first = dayNumber('2026-02-16' as IsoDate);

describe('any text at all, read as a calendar', function () {
  this.timeout(fuzzTimeout);
  it('is read without an error; its problems lie inside it, its times in their order', () => {
    let spans = 0;
    let problems = 0;
    const event = fc
      .tuple(
        fc.constantFrom('DURATION:PT1H', 'DTEND:20260224T200000', 'DTSTAMP:20260201T000000Z'),
        anyText(pieces, 3),
      )
      .map(
        ([end, text]) =>
          `BEGIN:VEVENT\r\nUID:b\r\nDTSTART:20260224T183000\r\n${end}\r\n${text}\r\nEND:VEVENT\r\n`,
      );
    const whole = fc
      .array(event, { maxLength: 3 })
      .map((all) => `BEGIN:VCALENDAR\r\n${all.join('')}END:VCALENDAR\r\n`);
    fc.assert(
      fc.property(fc.oneof(anyText(pieces), whole), (text) => {
        const calendar = readBusyCalendar(text);
        problems += calendar.problems.length;
        for (const { range } of calendar.problems)
          assert.ok(range.start >= 0 && range.start <= range.end && range.end <= text.length);
        const busy = busyBetween(calendar, first, first + 21, 'Europe/Berlin');
        spans += busy.spans.length + busy.days.length;
        for (const { start, end } of busy.spans) assert.ok(start < end, `${start} to ${end}`);
        for (const days of busy.days) assert.ok(days.first <= days.last);
      }),
      { ...fuzzRuns, seed: fuzzRuns.seed + 2 },
    );
    assert.ok(spans > fuzzRuns.numRuns / 10, `${spans} spans`);
    assert.ok(problems > fuzzRuns.numRuns / 2, `${problems} problems`);
  });
});
