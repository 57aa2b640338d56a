/**
 * Recurring events against two other libraries, on random events (seeded).
 *
 * ical.js steps through a rule from its beginning; node-ical reads whole files and expands them with rules,
 * exceptions and changed occurrences. Neither shares the way in which this program tells occurrences: it asks each day
 * by itself. Rules are kept to what RFC 5545 defines: the first start is an occurrence of the rule.
 */
import assert from 'node:assert/strict';
import fc from 'fast-check';
import ICAL from 'ical.js';
import nodeIcal from 'node-ical';
import { busyBetween, readBusyCalendar } from '../../src/journal/calendar/busy-calendar';
import { instantAt, namedClock } from '../../src/journal/calendar/zone-clock';

const zones = ['America/New_York', 'Europe/Berlin', 'Asia/Kathmandu', 'Australia/Sydney'] as const;
const weekdays = ['MO', 'TU', 'WE', 'TH', 'FR', 'SA', 'SU'] as const;
const dayOf2015 = Date.UTC(2015, 0, 1) / 86_400_000;

function someOf<Value>(values: readonly Value[]): fc.Arbitrary<Value[]> {
  return fc.subarray([...values], { minLength: 1 });
}

const intervals = fc
  .integer({ min: 1, max: 4 })
  .map((interval) => (interval === 1 ? '' : `;INTERVAL=${interval}`));
const weekStarts = fc.constantFrom('', ';WKST=MO', ';WKST=SU', ';WKST=WE');
const listOfWeekdays = someOf(weekdays).map((names) => names.join(','));
const ordinalWeekdays = fc
  .uniqueArray(fc.tuple(fc.constantFrom(1, 2, 3, 4, -1, -2), fc.constantFrom(...weekdays)), {
    minLength: 1,
    maxLength: 3,
    selector: String,
  })
  .map((list) => list.map(([ordinal, weekday]) => `${ordinal}${weekday}`).join(','));
const monthDays = someOf([1, 5, 13, 28, 31]).map((days) => days.join(','));
const months = someOf([1, 2, 3, 6, 9, 12]).map((list) => list.join(','));

/** Rules without an end. */
const rules = fc.oneof(
  fc.tuple(intervals).map(([interval]) => `FREQ=DAILY${interval}`),
  fc.tuple(intervals, listOfWeekdays).map(([interval, days]) => `FREQ=DAILY${interval};BYDAY=${days}`),
  fc.tuple(intervals, weekStarts).map(([interval, start]) => `FREQ=WEEKLY${interval}${start}`),
  fc
    .tuple(intervals, weekStarts, listOfWeekdays)
    .map(([interval, start, days]) => `FREQ=WEEKLY${interval}${start};BYDAY=${days}`),
  fc.tuple(intervals, monthDays).map(([interval, days]) => `FREQ=MONTHLY${interval};BYMONTHDAY=${days}`),
  fc.tuple(intervals, ordinalWeekdays).map(([interval, days]) => `FREQ=MONTHLY${interval};BYDAY=${days}`),
  fc
    .tuple(listOfWeekdays, fc.constantFrom(1, 2, -1))
    .map(([days, position]) => `FREQ=MONTHLY;BYDAY=${days};BYSETPOS=${position}`),
  fc
    .tuple(months, fc.constantFrom(1, 13, 28))
    .map(([list, day]) => `FREQ=YEARLY;BYMONTH=${list};BYMONTHDAY=${day}`),
  fc.tuple(months, ordinalWeekdays).map(([list, days]) => `FREQ=YEARLY;BYMONTH=${list};BYDAY=${days}`),
);

const events = fc.record({
  rule: rules,
  count: fc.option(fc.integer({ min: 1, max: 60 }), { nil: undefined, freq: 1 }),
  day: fc.integer({ min: dayOf2015, max: dayOf2015 + 3650 }),
  hour: fc.integer({ min: 5, max: 22 }),
  minute: fc.constantFrom(0, 15, 50),
  zone: fc.constantFrom(...zones),
  /** Days from the first start to the period that is looked at. */
  later: fc.integer({ min: 0, max: 900 }),
});

type Event = typeof events extends fc.Arbitrary<infer Value> ? Value : never;

/** `20260301T183000` of minutes since 1970 on some clock. */
function written(local: number): string {
  return new Date(local * 60_000).toISOString().slice(0, 19).replaceAll(/[-:]/g, '');
}

function minutesOf(time: ICAL.Time): number {
  return Date.UTC(time.year, time.month - 1, time.day, time.hour, time.minute) / 60_000;
}

/** Local starts of the event's rule, the first of which is the event's own, as ical.js steps through them. */
function steps({ rule, day, hour, minute, count }: Event, until: number): readonly number[] {
  const begin = ICAL.Time.fromJSDate(new Date((day * 1440 + hour * 60 + minute) * 60_000), true);
  begin.zone = ICAL.Timezone.localTimezone;
  // The library gives the day it begins with whether the rule allows it or not; the second one the rule has given.
  const before = ICAL.Recur.fromString(rule).iterator(begin);
  before.next();
  const first = before.next();
  if (!first) return [];
  const ended = count === undefined ? rule : `${rule};COUNT=${count}`;
  const iterator = ICAL.Recur.fromString(ended).iterator(first.clone());
  const found: number[] = [];
  for (let next = iterator.next(); next && minutesOf(next) < until; next = iterator.next()) {
    found.push(minutesOf(next));
  }
  return found;
}

function calendarText(lines: readonly string[], ...others: (readonly string[])[]): string {
  return [
    'BEGIN:VCALENDAR',
    'VERSION:2.0',
    'PRODID:-//test//EN',
    ...[lines, ...others].flatMap((event) => [
      'BEGIN:VEVENT',
      'UID:recurring',
      'DTSTAMP:20260101T000000Z',
      'SUMMARY:Shift',
      ...event,
      'END:VEVENT',
    ]),
    'END:VCALENDAR',
    '',
  ].join('\r\n');
}

function ruleOf({ rule, count }: Event): string {
  return count === undefined ? rule : `${rule};COUNT=${count}`;
}

describe('recurring events as two other libraries tell them', () => {
  it('the steps of ical.js are the days that a rule allows [C]', () => {
    let compared = 0;
    fc.assert(
      fc.property(events, (event) => {
        const from = event.day + event.later;
        const to = from + 400;
        const all = steps(event, (to + 1) * 1440);
        const [first] = all;
        if (first === undefined) return;
        const calendar = readBusyCalendar(
          calendarText([
            `DTSTART;TZID=${event.zone}:${written(first)}`,
            'DURATION:PT30M',
            `RRULE:${ruleOf(event)}`,
          ]),
        );
        assert.deepEqual(calendar.problems, []);
        const { spans } = busyBetween(calendar, from, to, event.zone);
        const expected = all.filter((local) => local >= from * 1440);
        compared += expected.length;
        assert.deepEqual(
          spans.map(({ clock }) => written(clock.start)),
          expected.map(written),
        );
      }),
      { seed: 20260301, numRuns: 400 },
    );
    assert(compared > 5000, `${compared} occurrences`);
  });

  it('node-ical reads the same instants, with an exception and a changed occurrence [C]', () => {
    let compared = 0;
    fc.assert(
      fc.property(events, fc.nat(), fc.nat(), (event, one, other) => {
        const clock = namedClock(event.zone);
        const from = event.day;
        const to = from + 300;
        const all = steps(event, (to + 1) * 1440);
        const [first] = all;
        if (first === undefined) return;
        const left = all[one % all.length] ?? first;
        const changed = all[other % all.length] ?? first;
        const text = calendarText(
          [
            `DTSTART;TZID=${event.zone}:${written(first)}`,
            `DTEND;TZID=${event.zone}:${written(first + 45)}`,
            `RRULE:${ruleOf(event)}`,
            ...(left === changed ? [] : [`EXDATE;TZID=${event.zone}:${written(left)}`]),
          ],
          [
            `RECURRENCE-ID;TZID=${event.zone}:${written(changed)}`,
            `DTSTART;TZID=${event.zone}:${written(changed + 60)}`,
            `DTEND;TZID=${event.zone}:${written(changed + 90)}`,
          ],
        );
        const { spans } = busyBetween(readBusyCalendar(text), from, to, event.zone);
        const read = Object.values(nodeIcal.sync.parseICS(text)).find((part) => part?.type === 'VEVENT');
        assert(read?.type === 'VEVENT');
        const theirs = nodeIcal
          .expandRecurringEvent(read, {
            from: new Date(instantAt(clock, from * 1440) * 60_000),
            to: new Date(instantAt(clock, (to + 1) * 1440) * 60_000 - 1),
          })
          .map(({ start, end }) => `${start.toISOString()} ${end.toISOString()}`);
        compared += theirs.length;
        assert.deepEqual(
          spans.map(
            ({ start, end }) =>
              `${new Date(start * 60_000).toISOString()} ${new Date(end * 60_000).toISOString()}`,
          ),
          theirs.sort(),
          text,
        );
      }),
      { seed: 20260302, numRuns: 60 },
    );
    assert(compared > 500, `${compared} occurrences`);
  }).timeout(60_000);
});
