/**
 * Recurrence rules of iCalendar.
 *
 * Every example of RFC 5545, section 3.8.5.3, with the list of occurrences that the standard prints beside it, and
 * the two of section 3.3.10 [R rfc5545.txt]. All of them take place at 9 in the morning in New York unless their
 * line says otherwise. Lists that the standard leaves open with dots are compared as far as it prints them.
 */
import assert from 'node:assert/strict';
import { busyBetween, readBusyCalendar } from '../../src/journal/calendar/busy-calendar';
import { dayNumber } from '../../src/notation/time/iso-date';
import { date } from '../training/dates';

const months = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
];

/** `September 2,9-11; October 7` of a year as dates. */
function datesIn(year: number, text: string): readonly string[] {
  return text.split(';').flatMap((part) => {
    const [month = '', days = ''] = part.trim().split(' ');
    const number = months.indexOf(month) + 1;
    return days.split(',').flatMap((written) => {
      const [from = 0, to = from] = written.split('-').map(Number);
      return Array.from(
        { length: to - from + 1 },
        (_, index) => `${year}-${String(number).padStart(2, '0')}-${String(from + index).padStart(2, '0')}`,
      );
    });
  });
}

/** Occurrences as the clock in New York shows them: `1997-09-02 09:00`. */
function occurrences(lines: readonly string[], first: string, last: string): readonly string[] {
  const calendar = readBusyCalendar(
    [
      'BEGIN:VCALENDAR',
      'VERSION:2.0',
      'BEGIN:VEVENT',
      'UID:example',
      ...lines,
      'DURATION:PT1M',
      'END:VEVENT',
      'END:VCALENDAR',
    ].join('\r\n'),
  );
  assert.deepEqual(calendar.problems, []);
  const { spans } = busyBetween(calendar, dayNumber(date(first)), dayNumber(date(last)), 'America/New_York');
  return spans.map(({ clock }) =>
    new Date(clock.start * 60_000).toISOString().slice(0, 16).replace('T', ' '),
  );
}

interface Example {
  readonly title: string;
  readonly start: string;
  readonly rules: readonly string[];
  readonly excluded?: string;
  readonly years: Readonly<Record<number, string>>;
  /** The list is complete: nothing may follow in the ten years behind it. */
  readonly isWhole?: true;
}

const everyDay = 'September 2-30; October 1-31; November 1-30; December 1-23';
const everyOtherDay =
  'September 2,4,6,8,10,12,14,16,18,20,22,24,26,28,30; October 2,4,6,8,10,12,14,16,18,20,22,24,26,28,30; November 1,3,5,7,9,11,13,15,17,19,21,23,25,27,29; December 1,3,5';
const januaryDays = 'January 1-31';
const otherWeeks =
  'September 1,3,5,15,17,19,29; October 1,3,13,15,17,27,29,31; November 10,12,14,24,26,28; December 8,10,12,22';

const examples: readonly Example[] = [
  {
    title: 'daily for 10 occurrences',
    start: '19970902',
    rules: ['FREQ=DAILY;COUNT=10'],
    years: { 1997: 'September 2-11' },
    isWhole: true,
  },
  {
    title: 'daily until December 24, 1997',
    start: '19970902',
    rules: ['FREQ=DAILY;UNTIL=19971224T000000Z'],
    years: { 1997: everyDay },
    isWhole: true,
  },
  {
    title: 'every other day',
    start: '19970902',
    rules: ['FREQ=DAILY;INTERVAL=2'],
    years: { 1997: everyOtherDay },
  },
  {
    title: 'every 10 days, 5 occurrences',
    start: '19970902',
    rules: ['FREQ=DAILY;INTERVAL=10;COUNT=5'],
    years: { 1997: 'September 2,12,22; October 2,12' },
    isWhole: true,
  },
  {
    title: 'every day in January, for 3 years',
    start: '19980101',
    rules: [
      'FREQ=YEARLY;UNTIL=20000131T140000Z;BYMONTH=1;BYDAY=SU,MO,TU,WE,TH,FR,SA',
      'FREQ=DAILY;UNTIL=20000131T140000Z;BYMONTH=1',
    ],
    years: { 1998: januaryDays, 1999: januaryDays, 2000: januaryDays },
    isWhole: true,
  },
  {
    title: 'weekly for 10 occurrences',
    start: '19970902',
    rules: ['FREQ=WEEKLY;COUNT=10'],
    years: { 1997: 'September 2,9,16,23,30; October 7,14,21,28; November 4' },
    isWhole: true,
  },
  {
    title: 'weekly until December 24, 1997',
    start: '19970902',
    rules: ['FREQ=WEEKLY;UNTIL=19971224T000000Z'],
    years: {
      1997: 'September 2,9,16,23,30; October 7,14,21,28; November 4,11,18,25; December 2,9,16,23',
    },
    isWhole: true,
  },
  {
    title: 'every other week',
    start: '19970902',
    rules: ['FREQ=WEEKLY;INTERVAL=2;WKST=SU'],
    years: {
      1997: 'September 2,16,30; October 14,28; November 11,25; December 9,23',
      1998: 'January 6,20; February 3,17',
    },
  },
  {
    title: 'weekly on Tuesday and Thursday for five weeks',
    start: '19970902',
    rules: [
      'FREQ=WEEKLY;UNTIL=19971007T000000Z;WKST=SU;BYDAY=TU,TH',
      'FREQ=WEEKLY;COUNT=10;WKST=SU;BYDAY=TU,TH',
    ],
    years: { 1997: 'September 2,4,9,11,16,18,23,25,30; October 2' },
    isWhole: true,
  },
  {
    title: 'every other week on Monday, Wednesday and Friday until December 24, 1997',
    start: '19970901',
    rules: ['FREQ=WEEKLY;INTERVAL=2;UNTIL=19971224T000000Z;WKST=SU;BYDAY=MO,WE,FR'],
    years: { 1997: otherWeeks },
    isWhole: true,
  },
  {
    title: 'every other week on Tuesday and Thursday, for 8 occurrences',
    start: '19970902',
    rules: ['FREQ=WEEKLY;INTERVAL=2;COUNT=8;WKST=SU;BYDAY=TU,TH'],
    years: { 1997: 'September 2,4,16,18,30; October 2,14,16' },
    isWhole: true,
  },
  {
    title: 'monthly on the first Friday for 10 occurrences',
    start: '19970905',
    rules: ['FREQ=MONTHLY;COUNT=10;BYDAY=1FR'],
    years: {
      1997: 'September 5; October 3; November 7; December 5',
      1998: 'January 2; February 6; March 6; April 3; May 1; June 5',
    },
    isWhole: true,
  },
  {
    title: 'monthly on the first Friday until December 24, 1997',
    start: '19970905',
    rules: ['FREQ=MONTHLY;UNTIL=19971224T000000Z;BYDAY=1FR'],
    years: { 1997: 'September 5; October 3; November 7; December 5' },
    isWhole: true,
  },
  {
    title: 'every other month on the first and last Sunday for 10 occurrences',
    start: '19970907',
    rules: ['FREQ=MONTHLY;INTERVAL=2;COUNT=10;BYDAY=1SU,-1SU'],
    years: { 1997: 'September 7,28; November 2,30', 1998: 'January 4,25; March 1,29; May 3,31' },
    isWhole: true,
  },
  {
    title: 'monthly on the second-to-last Monday for 6 months',
    start: '19970922',
    rules: ['FREQ=MONTHLY;COUNT=6;BYDAY=-2MO'],
    years: {
      1997: 'September 22; October 20; November 17; December 22',
      1998: 'January 19; February 16',
    },
    isWhole: true,
  },
  {
    title: 'monthly on the third-to-the-last day of the month',
    start: '19970928',
    rules: ['FREQ=MONTHLY;BYMONTHDAY=-3'],
    years: {
      1997: 'September 28; October 29; November 28; December 29',
      1998: 'January 29; February 26',
    },
  },
  {
    title: 'monthly on the 2nd and 15th for 10 occurrences',
    start: '19970902',
    rules: ['FREQ=MONTHLY;COUNT=10;BYMONTHDAY=2,15'],
    years: {
      1997: 'September 2,15; October 2,15; November 2,15; December 2,15',
      1998: 'January 2,15',
    },
    isWhole: true,
  },
  {
    title: 'monthly on the first and last day for 10 occurrences',
    start: '19970930',
    rules: ['FREQ=MONTHLY;COUNT=10;BYMONTHDAY=1,-1'],
    years: {
      1997: 'September 30; October 1,31; November 1,30; December 1,31',
      1998: 'January 1,31; February 1',
    },
    isWhole: true,
  },
  {
    title: 'every 18 months on the 10th thru 15th for 10 occurrences',
    start: '19970910',
    rules: ['FREQ=MONTHLY;INTERVAL=18;COUNT=10;BYMONTHDAY=10,11,12,13,14,15'],
    years: { 1997: 'September 10-15', 1999: 'March 10-13' },
    isWhole: true,
  },
  {
    title: 'every Tuesday, every other month',
    start: '19970902',
    rules: ['FREQ=MONTHLY;INTERVAL=2;BYDAY=TU'],
    years: {
      1997: 'September 2,9,16,23,30; November 4,11,18,25',
      1998: 'January 6,13,20,27; March 3,10,17,24,31',
    },
  },
  {
    title: 'yearly in June and July for 10 occurrences',
    start: '19970610',
    rules: ['FREQ=YEARLY;COUNT=10;BYMONTH=6,7'],
    years: {
      1997: 'June 10; July 10',
      1998: 'June 10; July 10',
      1999: 'June 10; July 10',
      2000: 'June 10; July 10',
      2001: 'June 10; July 10',
    },
    isWhole: true,
  },
  {
    title: 'every other year in January, February and March for 10 occurrences',
    start: '19970310',
    rules: ['FREQ=YEARLY;INTERVAL=2;COUNT=10;BYMONTH=1,2,3'],
    years: {
      1997: 'March 10',
      1999: 'January 10; February 10; March 10',
      2001: 'January 10; February 10; March 10',
      2003: 'January 10; February 10; March 10',
    },
    isWhole: true,
  },
  {
    title: 'every third year on the 1st, 100th and 200th day for 10 occurrences',
    start: '19970101',
    rules: ['FREQ=YEARLY;INTERVAL=3;COUNT=10;BYYEARDAY=1,100,200'],
    years: {
      1997: 'January 1; April 10; July 19',
      2000: 'January 1; April 9; July 18',
      2003: 'January 1; April 10; July 19',
      2006: 'January 1',
    },
    isWhole: true,
  },
  {
    title: 'every 20th Monday of the year',
    start: '19970519',
    rules: ['FREQ=YEARLY;BYDAY=20MO'],
    years: { 1997: 'May 19', 1998: 'May 18', 1999: 'May 17' },
  },
  {
    title: 'Monday of week number 20',
    start: '19970512',
    rules: ['FREQ=YEARLY;BYWEEKNO=20;BYDAY=MO'],
    years: { 1997: 'May 12', 1998: 'May 11', 1999: 'May 17' },
  },
  {
    title: 'every Thursday in March',
    start: '19970313',
    rules: ['FREQ=YEARLY;BYMONTH=3;BYDAY=TH'],
    years: { 1997: 'March 13,20,27', 1998: 'March 5,12,19,26', 1999: 'March 4,11,18,25' },
  },
  {
    title: 'every Thursday, but only during June, July and August',
    start: '19970605',
    rules: ['FREQ=YEARLY;BYDAY=TH;BYMONTH=6,7,8'],
    years: {
      1997: 'June 5,12,19,26; July 3,10,17,24,31; August 7,14,21,28',
      1998: 'June 4,11,18,25; July 2,9,16,23,30; August 6,13,20,27',
      1999: 'June 3,10,17,24; July 1,8,15,22,29; August 5,12,19,26',
    },
  },
  {
    title: 'every Friday the 13th, the first start excluded',
    start: '19970902',
    rules: ['FREQ=MONTHLY;BYDAY=FR;BYMONTHDAY=13'],
    excluded: '19970902',
    years: { 1998: 'February 13; March 13; November 13', 1999: 'August 13', 2000: 'October 13' },
  },
  {
    title: 'the first Saturday that follows the first Sunday of the month',
    start: '19970913',
    rules: ['FREQ=MONTHLY;BYDAY=SA;BYMONTHDAY=7,8,9,10,11,12,13'],
    years: {
      1997: 'September 13; October 11; November 8; December 13',
      1998: 'January 10; February 7; March 7; April 11; May 9; June 13',
    },
  },
  {
    title: 'every 4 years, the first Tuesday after a Monday in November',
    start: '19961105',
    rules: ['FREQ=YEARLY;INTERVAL=4;BYMONTH=11;BYDAY=TU;BYMONTHDAY=2,3,4,5,6,7,8'],
    years: { 1996: 'November 5', 2000: 'November 7', 2004: 'November 2' },
  },
  {
    title: 'the third instance into the month of Tuesday, Wednesday or Thursday, for 3 months',
    start: '19970904',
    rules: ['FREQ=MONTHLY;COUNT=3;BYDAY=TU,WE,TH;BYSETPOS=3'],
    years: { 1997: 'September 4; October 7; November 6' },
    isWhole: true,
  },
  {
    title: 'the second-to-last weekday of the month',
    start: '19970929',
    rules: ['FREQ=MONTHLY;BYDAY=MO,TU,WE,TH,FR;BYSETPOS=-2'],
    years: {
      1997: 'September 29; October 30; November 27; December 30',
      1998: 'January 29; February 26; March 30',
    },
  },
  {
    title: 'every other Tuesday and Sunday, weeks beginning on Monday',
    start: '19970805',
    rules: ['FREQ=WEEKLY;INTERVAL=2;COUNT=4;BYDAY=TU,SU;WKST=MO'],
    years: { 1997: 'August 5,10,19,24' },
    isWhole: true,
  },
  {
    title: 'the same, weeks beginning on Sunday',
    start: '19970805',
    rules: ['FREQ=WEEKLY;INTERVAL=2;COUNT=4;BYDAY=TU,SU;WKST=SU'],
    years: { 1997: 'August 5,17,19,31' },
    isWhole: true,
  },
  {
    title: 'an invalid date (February 30) is ignored',
    start: '20070115',
    rules: ['FREQ=MONTHLY;BYMONTHDAY=15,30;COUNT=5'],
    years: { 2007: 'January 15,30; February 15; March 15,30' },
    isWhole: true,
  },
  {
    title: 'ten occurrences every other day (3.3.10)',
    start: '19970902',
    rules: ['FREQ=DAILY;COUNT=10;INTERVAL=2'],
    years: { 1997: 'September 2,4,6,8,10,12,14,16,18,20' },
    isWhole: true,
  },
];

describe('recurrence rules (RFC 5545, 3.8.5.3)', () => {
  for (const { title, start, rules, excluded, years, isWhole } of examples) {
    for (const rule of rules) {
      it(`${title}: ${rule} [R]`, () => {
        const expected = Object.entries(years).flatMap(([year, text]) => datesIn(Number(year), text));
        const until = isWhole
          ? `${Number(expected.at(-1)?.slice(0, 4)) + 10}-12-31`
          : (expected.at(-1) ?? '');
        const found = occurrences(
          [
            `DTSTART;TZID=America/New_York:${start}T090000`,
            `RRULE:${rule}`,
            ...(excluded === undefined ? [] : [`EXDATE;TZID=America/New_York:${excluded}T090000`]),
          ],
          '1996-01-01',
          until,
        );
        assert.deepEqual(
          found,
          expected.map((day) => `${day} 09:00`),
        );
      });
    }
  }

  it('every 3 hours from 9:00 to 17:00 on a specific day [R, its UNTIL mended]', () => {
    // The standard prints 17:00 in UTC where it means the clock of New York.
    assert.deepEqual(
      occurrences(
        [
          'DTSTART;TZID=America/New_York:19970902T090000',
          'RRULE:FREQ=HOURLY;INTERVAL=3;UNTIL=19970902T210000Z',
        ],
        '1997-09-01',
        '1997-09-10',
      ),
      ['1997-09-02 09:00', '1997-09-02 12:00', '1997-09-02 15:00'],
    );
  });

  it('every 15 minutes for 6 occurrences [R]', () => {
    assert.deepEqual(
      occurrences(
        ['DTSTART;TZID=America/New_York:19970902T090000', 'RRULE:FREQ=MINUTELY;INTERVAL=15;COUNT=6'],
        '1997-09-01',
        '1997-09-10',
      ),
      ['09:00', '09:15', '09:30', '09:45', '10:00', '10:15'].map((time) => `1997-09-02 ${time}`),
    );
  });

  it('every hour and a half for 4 occurrences [R]', () => {
    assert.deepEqual(
      occurrences(
        ['DTSTART;TZID=America/New_York:19970902T090000', 'RRULE:FREQ=MINUTELY;INTERVAL=90;COUNT=4'],
        '1997-09-01',
        '1997-09-10',
      ),
      ['09:00', '10:30', '12:00', '13:30'].map((time) => `1997-09-02 ${time}`),
    );
  });

  for (const rule of [
    'FREQ=DAILY;BYHOUR=9,10,11,12,13,14,15,16;BYMINUTE=0,20,40',
    'FREQ=MINUTELY;INTERVAL=20;BYHOUR=9,10,11,12,13,14,15,16',
  ]) {
    it(`every 20 minutes from 9:00 to 16:40 every day: ${rule} [R]`, () => {
      const times = [9, 10, 11, 12, 13, 14, 15, 16].flatMap((hour) =>
        ['00', '20', '40'].map((minute) => `${String(hour).padStart(2, '0')}:${minute}`),
      );
      assert.deepEqual(
        occurrences(
          ['DTSTART;TZID=America/New_York:19970902T090000', `RRULE:${rule}`],
          '1997-09-01',
          '1997-09-03',
        ),
        ['1997-09-02', '1997-09-03'].flatMap((day) => times.map((time) => `${day} ${time}`)),
      );
    });
  }

  it('Sundays in January at 8:30 and 9:30, every other year (3.3.10) [R]', () => {
    assert.deepEqual(
      occurrences(
        [
          'DTSTART;TZID=America/New_York:19970105T083000',
          'RRULE:FREQ=YEARLY;INTERVAL=2;BYMONTH=1;BYDAY=SU;BYHOUR=8,9;BYMINUTE=30',
        ],
        '1996-01-01',
        '1999-01-03',
      ),
      ['1997-01-05', '1997-01-12', '1997-01-19', '1997-01-26', '1999-01-03'].flatMap((day) => [
        `${day} 08:30`,
        `${day} 09:30`,
      ]),
    );
  });
});
