import assert from 'node:assert/strict';
import { openJournalFile } from '../../src/journal/calendar-file';
import { dayNumber } from '../../src/notation/time/iso-date';
import { isoWeekOf } from '../../src/notation/time/iso-week';
import { openHours } from '../../src/planning/open-hours';
import { fillMessage } from '../../src/training/finding';
import { PublishedFindings } from '../../src/training/published-findings';
import { date } from './dates';
import { findingsIn, journalFromNotes, told } from './journal-from-text';

function calendar(...lines: string[]): string {
  return ['BEGIN:VCALENDAR', 'BEGIN:VEVENT', 'UID:a', ...lines, 'END:VEVENT', 'END:VCALENDAR', ''].join(
    '\r\n',
  );
}

const lateShifts = calendar(
  'SUMMARY:Late shift',
  'DTSTART;TZID=Europe/Lisbon:20260105T140000',
  'DTEND;TZID=Europe/Lisbon:20260105T190000',
  'RRULE:FREQ=WEEKLY;BYDAY=MO,TH',
);
const thursday = { '2026-02-26.md': '- [ ] #session flexibility 18:30 75min 6/10\n' };
const today = '2026-02-25';

describe('hours that calendar files take', () => {
  it('are no hours to train, on the clock of the journal', () => {
    assert.deepEqual(
      told('outside-free-hours', { ...thursday, 'work.ics': lateShifts }, today, 'Europe/Lisbon'),
      [
        '2026-02-26.md | warning | #session flexibility 18:30 75min 6/10 | Thursday 14:00-19:00 is marked as busy; the session is at 18:30-19:45',
      ],
    );
    // In Berlin the shift ends at 20:00, in the Azores at 18:00.
    assert.equal(
      told('outside-free-hours', { ...thursday, 'work.ics': lateShifts }, today, 'Europe/Berlin').length,
      1,
    );
    assert.deepEqual(
      told('outside-free-hours', { ...thursday, 'work.ics': lateShifts }, today, 'Atlantic/Azores'),
      [],
    );
  });

  it('are told of with the line of the event', () => {
    const notes = { ...thursday, 'work.ics': lateShifts };
    const [found] = findingsIn(notes, today, 'Europe/Lisbon').filter(
      ({ code }) => code === 'outside-free-hours',
    );
    assert.deepEqual(
      found?.related.map(({ note, range, message }) => [
        note,
        lateShifts.slice(range.start, range.end),
        fillMessage(message),
      ]),
      [['work.ics', 'SUMMARY:Late shift', 'The busy time']],
    );
  });

  it('of a whole day take the day', () => {
    const trip = calendar('DTSTART;VALUE=DATE:20260225', 'DTEND;VALUE=DATE:20260228');
    assert.deepEqual(told('outside-free-hours', { ...thursday, 'trip.ics': trip }, today), [
      '2026-02-26.md | warning | #session flexibility 18:30 75min 6/10 | 2026-02-26 is marked as busy',
    ]);
  });

  it('leave the rest of the free hours to planning', () => {
    const journal = journalFromNotes({
      'journal.md': '- #free thu 17:00-21:00\n',
      ...thursday,
      'work.ics': lateShifts,
    });
    const day = dayNumber(date('2026-02-26'));
    const [session] = journal.sessions(day, day);
    assert(session);
    assert.deepEqual(openHours(journal.plan, session, day, 'Europe/Lisbon'), [
      { start: 19 * 60, end: 21 * 60 },
    ]);
  });
});

describe('what a calendar file cannot say', () => {
  const broken = calendar('SUMMARY:Shift', 'DTSTART:20260230T090000', 'DTEND:20260226T170000');

  it('stands on its line in the file', () => {
    assert.deepEqual(told('unreadable-calendar', { 'journal.md': '', 'work.ics': broken }, today), [
      'work.ics | warning | DTSTART:20260230T090000 | 20260230T090000 is not a date or a time of a calendar; what it stands for does not count',
    ]);
  });

  it('is shown, and gone once it is mended', () => {
    const journal = journalFromNotes({ 'journal.md': '', 'work.ics': broken });
    const published = new PublishedFindings(journal);
    const view = {
      today: date(today),
      zone: 'UTC',
      weeks: [isoWeekOf(date(today))],
      openNotes: new Set<string>(),
    };
    assert.deepEqual(
      [...published.refresh(view)].filter((path) => path === 'work.ics'),
      ['work.ics'],
    );
    assert.equal(published.of('work.ics').length, 1);
    journal.replace(openJournalFile('work.ics', lateShifts));
    assert.deepEqual([...published.refresh(view)], ['work.ics']);
    assert.deepEqual(published.of('work.ics'), []);
  });
});
