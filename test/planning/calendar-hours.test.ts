import assert from 'node:assert/strict';
import { formatTime } from '../../src/notation/time/wall-clock';
import { planNextWeek } from '../../src/planning/next-week';
import { date, journalOf } from './journal-of';

const shifts = [
  'BEGIN:VCALENDAR',
  'BEGIN:VEVENT',
  'UID:a',
  'SUMMARY:Shift',
  'DTSTART;TZID=Europe/Lisbon:20260105T060000',
  'DTEND;TZID=Europe/Lisbon:20260105T190000',
  'RRULE:FREQ=DAILY',
  'END:VEVENT',
  'BEGIN:VEVENT',
  'UID:b',
  'SUMMARY:Trip',
  'DTSTART;VALUE=DATE:20260304',
  'DTEND;VALUE=DATE:20260309',
  'END:VEVENT',
  'END:VCALENDAR',
].join('\r\n');

/** Where next week's sessions go: `2026-03-02 19:00`. */
function placed(notes: Readonly<Record<string, string>>): readonly string[] {
  const plan = planNextWeek(journalOf(notes), { today: date('2026-02-25'), zone: 'Europe/Lisbon' });
  return plan.placed.map(({ date: day, start }) => `${day} ${start === undefined ? '' : formatTime(start)}`);
}

describe('next week beside the calendar files of a journal', () => {
  const notes = {
    'journal.md': '- #free everyday 17:00-21:00\n'.replace('everyday', 'mon tue wed thu fri sat sun'),
    'goals.md': '- #goal split by:2026-06-14\n- #need flexibility 2/week 60min 5/10\n',
  };

  it('is laid into the hours that they leave', () => {
    const found = placed({ ...notes, 'shifts.ics': shifts });
    assert.equal(found.length >= 2, true, found.join(', '));
    for (const one of found) {
      assert(one.startsWith('2026-03-02') || one.startsWith('2026-03-03'), `${one} is no day of the trip`);
      assert(one.slice(11) >= '19:00', `${one} is after the shift`);
    }
  });

  it('would otherwise begin when the free hours do', () => {
    assert(placed(notes).some((one) => one.slice(11) < '19:00'));
  });
});
