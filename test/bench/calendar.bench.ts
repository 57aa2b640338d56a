/**
 * Busy times out of calendar files: 500 weekly events, begun over the last ten years, each with a zone of its own
 * definition and an exception, over three months. Invented.
 */
import { type BusyCalendar, readBusyCalendar } from '../../src/journal/calendar/busy-calendar';
import { dayNumber, isoDate } from '../../src/notation/time/iso-date';
import { date } from '../training/dates';
import { measure, printMeasurement } from './measure';

const zones = ['Europe/Lisbon', 'America/New_York', 'Asia/Kathmandu', 'Australia/Sydney'];
const weekdays = ['MO', 'TU', 'WE', 'TH', 'FR', 'SA', 'SU'];

function plain(day: number): string {
  return isoDate(day).replaceAll('-', '');
}

/** A calendar of `count` weekly events. */
function weeklyEvents(count: number): string {
  const first = dayNumber(date('2016-01-04'));
  const events = Array.from({ length: count }, (_, index) => {
    const day = first + ((index * 37) % 3650);
    const hour = String(6 + (index % 15)).padStart(2, '0');
    const zone = zones[index % zones.length];
    const weekday = weekdays[(((day + 3) % 7) + 7) % 7];
    return [
      'BEGIN:VEVENT',
      `UID:${index}`,
      'DTSTAMP:20260101T000000Z',
      `SUMMARY:Shift ${index}`,
      'DESCRIPTION:Bring the keys\\, and close the windows on the way out.',
      `DTSTART;TZID=${zone}:${plain(day)}T${hour}0000`,
      `DTEND;TZID=${zone}:${plain(day)}T${hour}4500`,
      `RRULE:FREQ=WEEKLY;BYDAY=${weekday}`,
      `EXDATE;TZID=${zone}:${plain(day + 7)}T${hour}0000`,
      'END:VEVENT',
    ].join('\r\n');
  });
  return ['BEGIN:VCALENDAR', 'VERSION:2.0', ...events, 'END:VCALENDAR', ''].join('\r\n');
}

const text = weeklyEvents(500);
const first = dayNumber(date('2026-03-01'));
const last = dayNumber(date('2026-05-31'));
const spansIn = (calendar: BusyCalendar) => calendar.between(first, last, 'Europe/Berlin').spans.length;

console.log(`${spansIn(readBusyCalendar(text))} occurrences in three months`);
printMeasurement('read 500 weekly events', await measure(() => readBusyCalendar(text)));
const calendars = Array.from({ length: 40 }, () => readBusyCalendar(text));
let turn = 0;
printMeasurement(
  'tell three months of them for the first time',
  await measure(() => {
    const calendar = calendars[turn];
    turn += 1;
    return calendar && spansIn(calendar);
  }),
);
const known = readBusyCalendar(text);
spansIn(known);
printMeasurement('tell them again', await measure(() => spansIn(known)));
