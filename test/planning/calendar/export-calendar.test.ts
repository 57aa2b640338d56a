import assert from 'node:assert/strict';
import { tzlib_get_ical_block } from 'timezones-ical-library';
import { dayNumber } from '../../../src/notation/time/iso-date';
import { contentsOf } from '../../../src/planning/calendar/previous-export';
import { changeSessionTime, moveSession, skipSession } from '../../../src/planning/session-changes';
import { applied, date, journalOf, type Notes, sessionOf } from '../journal-of';
import { eventsOf, exported, inShort, values } from './exports';

function moved(notes: Notes, from: string, to: string, words = ''): Notes {
  const journal = journalOf(notes);
  return applied(notes, moveSession(journal, sessionOf(journal, from, words), { date: date(to) }));
}

const week: Notes = {
  'journal.md': '# Journal\n\n- #athlete "Heron"\n- #zone Europe/Lisbon\n',
  'goals.md': [
    '- #goal low-split by:2026-06-14 "Front split, on the floor; both sides"',
    '- #why I want to stop holding my breath',
    '- #need strength 1/week 45min 6/10 routine:press',
    '- #routine press strength 45min',
    '  - Wall handstand 5x20s',
    '  - Press negatives 4x3',
    '',
  ].join('\n'),
  '2026-03-03.md': [
    '# Tuesday',
    '',
    '- [ ] #session flexibility 18:30 75min 7/10 for:low-split with:coach where:studio -- keep the hips level',
    '  - [ ] Cat stretch 2x10',
    '  - Pigeon 3x60s',
    '',
  ].join('\n'),
  '2026-03-05.md': '- [ ] #session strength\n',
  '2026-03-07.md': '- [ ] #session skill 10:00-11:30 skipped:travel\n',
  'events.md': '- #event 2026-03-14 "Spring show" for:low-split\n',
};

describe('a calendar of sessions', () => {
  it('is a file of the standard, whole and in order', () => {
    assert.equal(
      exported(week, { alarmMinutes: 45 }).replaceAll('\r\n', '\n'),
      `BEGIN:VCALENDAR
VERSION:2.0
PRODID:-//Markdown Training Journal//Markdown Training Journal//EN
CALSCALE:GREGORIAN
${[tzlib_get_ical_block('Europe/Lisbon')].flat()[0]?.replaceAll('\r\n', '\n')}
BEGIN:VEVENT
UID:session-2026-03-03-flexibility-1-heron@markdown-training-journal.invali
 d
DTSTAMP:20260301T101500Z
SEQUENCE:0
STATUS:CONFIRMED
DTSTART;TZID=Europe/Lisbon:20260303T183000
DTEND;TZID=Europe/Lisbon:20260303T194500
SUMMARY:flexibility: Front split\\, on the floor\\; both sides
DESCRIPTION:75 min\\, 7/10\\, with coach\\n- Cat stretch 2x10\\n- Pigeon 3x60s
LOCATION:studio
TRANSP:OPAQUE
BEGIN:VALARM
ACTION:DISPLAY
DESCRIPTION:flexibility: Front split\\, on the floor\\; both sides
TRIGGER:-PT45M
END:VALARM
END:VEVENT
BEGIN:VEVENT
UID:session-2026-03-05-strength-1-heron@markdown-training-journal.invalid
DTSTAMP:20260301T101500Z
SEQUENCE:0
STATUS:CONFIRMED
DTSTART;VALUE=DATE:20260305
DTEND;VALUE=DATE:20260306
SUMMARY:strength
DESCRIPTION:45 min\\n- Wall handstand 5x20s\\n- Press negatives 4x3
TRANSP:TRANSPARENT
END:VEVENT
BEGIN:VEVENT
UID:session-2026-03-07-skill-1-heron@markdown-training-journal.invalid
DTSTAMP:20260301T101500Z
SEQUENCE:1
STATUS:CANCELLED
DTSTART;TZID=Europe/Lisbon:20260307T100000
DTEND;TZID=Europe/Lisbon:20260307T113000
SUMMARY:skill
DESCRIPTION:90 min
TRANSP:TRANSPARENT
END:VEVENT
BEGIN:VEVENT
UID:event-2026-03-14-1-heron@markdown-training-journal.invalid
DTSTAMP:20260301T101500Z
SEQUENCE:0
STATUS:CONFIRMED
DTSTART;VALUE=DATE:20260314
DTEND;VALUE=DATE:20260315
SUMMARY:Spring show
TRANSP:TRANSPARENT
END:VEVENT
END:VCALENDAR
`,
    );
  });

  it('holds what is done, overdue and to come; an alarm only for what is to come', () => {
    const notes = {
      '2026-03-01.md': '- [x] #session skill 10:00 60min\n',
      '2026-03-02.md': '- [ ] #session skill 10:00 60min\n',
      '2026-03-04.md': '- [ ] #session skill 10:00 60min\n',
    };
    const text = exported(notes, { today: '2026-03-03', alarmMinutes: 30 });
    assert.deepEqual(inShort(text), [
      'session-2026-03-01-skill-1 0 confirmed 20260301T100000',
      'session-2026-03-02-skill-1 0 confirmed 20260302T100000',
      'session-2026-03-04-skill-1 0 confirmed 20260304T100000',
    ]);
    assert.deepEqual(
      eventsOf(text).map((lines) => lines.includes('BEGIN:VALARM')),
      [false, false, true],
    );
  });

  it('holds the days of the span alone', () => {
    const text = exported(week, { first: '2026-03-04', last: '2026-03-06' });
    assert.deepEqual(values(text, 'SUMMARY'), ['strength']);
  });

  it('is a calendar without any session as well', () => {
    const text = exported({ 'journal.md': '' });
    assert.deepEqual(eventsOf(text), []);
    assert(text.includes('BEGIN:VTIMEZONE'), 'the standard asks for one component at least');
  });

  it('has a start alone where nothing says how long a session lasts', () => {
    const [lines] = eventsOf(exported({ '2026-03-03.md': '- [ ] #session skill 18:30\n' }));
    assert.deepEqual(
      lines?.filter((line) => /^(?:DT|DUR)/.test(line) && !line.startsWith('DTSTAMP')),
      ['DTSTART;TZID=Europe/Lisbon:20260303T183000'],
    );
  });

  it('gives a session that the clock goes back in its real length', () => {
    const notes = { '2026-10-25.md': '- [ ] #session skill 01:30 45min\n' };
    const [lines] = eventsOf(exported(notes, { first: '2026-10-25', last: '2026-10-25' }));
    assert.deepEqual(
      lines?.filter((line) => /^(?:DTS|DTE|DUR)/.test(line) && !line.startsWith('DTSTAMP')),
      ['DTSTART;TZID=Europe/Lisbon:20261025T013000', 'DURATION:PT45M'],
    );
  });

  it('writes times of a journal in UTC as such', () => {
    const text = exported({ '2026-03-03.md': '- [ ] #session skill 18:30 60min\n' }, { zone: 'UTC' });
    assert.deepEqual(values(text, 'DTSTART'), ['20260303T183000Z']);
    assert(!text.includes('VTIMEZONE'));
  });
});

describe('the identifier of a session in a calendar', () => {
  const notes: Notes = { '2026-03-03.md': '- [ ] #session flexibility 18:30 75min 7/10\n  - Pigeon\n' };

  it('stays when the session is moved, again and again and back', () => {
    const once = moved(notes, '2026-03-03', '2026-03-05');
    assert.deepEqual(inShort(exported(once)), [
      'session-2026-03-03-flexibility-1 1 confirmed 20260305T183000',
    ]);
    const twice = moved(once, '2026-03-05', '2026-03-10');
    assert.deepEqual(inShort(exported(twice)), [
      'session-2026-03-03-flexibility-1 2 confirmed 20260310T183000',
    ]);
    const back = moved(twice, '2026-03-10', '2026-03-03');
    assert.deepEqual(inShort(exported(back)), [
      'session-2026-03-03-flexibility-1 3 confirmed 20260303T183000',
    ]);
  });

  it('stays when it is moved and not written on its new day yet', () => {
    const pointed = { '2026-03-03.md': '- [ ] #session flexibility 18:30 75min moved:2026-03-05\n' };
    assert.deepEqual(inShort(exported(pointed)), [
      'session-2026-03-03-flexibility-1 1 confirmed 20260305T183000',
    ]);
  });

  it('stays with its own session where another of the kind stands on the new day', () => {
    const both = {
      ...notes,
      '2026-03-05.md': '- [ ] #session flexibility 07:00 30min 3/10 where:home\n',
    };
    const after = moved(both, '2026-03-03', '2026-03-05');
    assert.deepEqual(inShort(exported(after)), [
      'session-2026-03-05-flexibility-1 0 confirmed 20260305T070000',
      'session-2026-03-03-flexibility-1 1 confirmed 20260305T183000',
    ]);
  });

  it('stays when its time, words, rating, exercises or box change', () => {
    const [uid] = values(exported(notes), 'UID');
    for (const line of [
      '- [ ] #session flexibility 07:00 75min 7/10\n',
      '- [x] #session flexibility 18:30 90min 9/10 -- it went well\n  - Frog\n',
      '* [ ] #session flexibility skipped:ill\n',
    ])
      assert.deepEqual(values(exported({ '2026-03-03.md': line }), 'UID'), [uid], line);
  });

  it('tells several of one kind on one day apart by their order in the note, whatever their times', () => {
    const two = {
      '2026-03-03.md':
        '- [ ] #session skill 18:30 60min\n- [ ] #session skill 07:00 60min\n- [ ] #session strength\n',
    };
    assert.deepEqual(inShort(exported(two)), [
      'session-2026-03-03-strength-1 0 confirmed 20260303',
      'session-2026-03-03-skill-2 0 confirmed 20260303T070000',
      'session-2026-03-03-skill-1 0 confirmed 20260303T183000',
    ]);
  });

  it('is that of its own journal, in letters that every calendar takes', () => {
    const own = { '2026-03-03.md': '- [ ] #session übung\n' };
    assert.deepEqual(values(exported(own, { journalId: 'wren' }), 'UID'), [
      'session-2026-03-03-_fc_bung-1-wren@markdown-training-journal.invalid',
    ]);
  });

  it('is exported at its new place when it was moved out of the span', () => {
    const after = moved(notes, '2026-03-03', '2026-04-10');
    assert.deepEqual(inShort(exported(after)), [
      'session-2026-03-03-flexibility-1 1 confirmed 20260410T183000',
    ]);
    assert.deepEqual(inShort(exported(after, { first: '2026-05-01', last: '2026-05-31' })), []);
  });

  it('does not go in circles where notes point at each other', () => {
    const circle = {
      '2026-03-03.md': '- [ ] #session skill moved:2026-03-04\n',
      '2026-03-04.md': '- [ ] #session skill moved:2026-03-03\n',
    };
    assert.deepEqual(inShort(exported(circle)), []);
    const self = { '2026-03-03.md': '- [ ] #session skill 10:00 moved:2026-03-03\n' };
    assert.equal(inShort(exported(self)).length <= 1, true);
  });
});

describe('a calendar that was exported before', () => {
  const notes: Notes = {
    '2026-03-03.md': '- [ ] #session flexibility 18:30 75min 7/10\n  - Pigeon\n',
    '2026-03-05.md': '- [ ] #session strength 18:30 60min\n',
  };
  const before = exported(notes);
  const later = { stamp: '2026-03-02T20:00Z' };

  it('is the same to the letter while nothing changes, whenever it is exported', () => {
    assert.equal(exported(notes, { ...later, previous: before }), before);
    assert.notEqual(exported(notes, later), before);
  });

  it('counts a change of time, and keeps the number afterwards', () => {
    const journal = journalOf(notes);
    const changed = applied(notes, changeSessionTime(journal, sessionOf(journal, '2026-03-03'), 7 * 60));
    const once = exported(changed, { ...later, previous: before });
    assert.deepEqual(inShort(once), [
      'session-2026-03-03-flexibility-1 1 confirmed 20260303T070000',
      'session-2026-03-05-strength-1 0 confirmed 20260305T183000',
    ]);
    assert.deepEqual(values(once, 'DTSTAMP'), ['20260302T200000Z', '20260301T101500Z']);
    assert.equal(exported(changed, { stamp: '2026-03-04T20:00Z', previous: once }), once);
    const again = exported(notes, { ...later, previous: once });
    assert.equal(values(again, 'SEQUENCE')[0], '2');
  });

  it('does not count a change of exercises, but stamps it', () => {
    const changed = { ...notes, '2026-03-03.md': '- [ ] #session flexibility 18:30 75min 7/10\n  - Frog\n' };
    const text = exported(changed, { ...later, previous: before });
    assert.equal(values(text, 'SEQUENCE')[0], '0');
    assert.equal(values(text, 'DTSTAMP')[0], '20260302T200000Z');
  });

  it('never lowers the number', () => {
    const often = before.replace('SEQUENCE:0', 'SEQUENCE:7');
    assert.equal(values(exported(notes, { ...later, previous: often }), 'SEQUENCE')[0], '7');
    const after = moved(notes, '2026-03-03', '2026-03-04');
    assert.equal(values(exported(after, { ...later, previous: often }), 'SEQUENCE')[0], '8');
  });

  it('cancels what is skipped, and what is gone from the notes', () => {
    const journal = journalOf(notes);
    const skipped = applied(notes, skipSession(journal, sessionOf(journal, '2026-03-03'), 'ill'));
    const rest: Notes = { '2026-03-03.md': skipped['2026-03-03.md'] ?? '' };
    const text = exported(rest, { ...later, previous: exported(notes, { alarmMinutes: 30 }) });
    assert.deepEqual(inShort(text), [
      'session-2026-03-03-flexibility-1 1 cancelled 20260303T183000',
      'session-2026-03-05-strength-1 1 cancelled 20260305T183000',
    ]);
    assert(!text.includes('VALARM'));
    // It stays cancelled, and is not counted again.
    assert.equal(exported(rest, { stamp: '2026-03-09T20:00Z', previous: text }), text);
    // What comes back takes place again.
    assert.deepEqual(inShort(exported(notes, { ...later, previous: text })), [
      'session-2026-03-03-flexibility-1 2 confirmed 20260303T183000',
      'session-2026-03-05-strength-1 2 confirmed 20260305T183000',
    ]);
  });

  it('leaves alone what lies outside of the span, and what is not its own', () => {
    const foreign = exported(notes, { journalId: 'wren' });
    assert.equal(exported(notes, { previous: foreign }), exported(notes));
    assert.deepEqual(
      inShort(exported({ 'journal.md': '' }, { first: '2026-03-04', ...later, previous: before })),
      ['session-2026-03-05-strength-1 1 cancelled 20260305T183000'],
    );
  });

  it('keeps the zone in which an event was written that is gone', () => {
    const text = exported({ 'journal.md': '' }, { ...later, previous: before, zone: 'Asia/Tokyo' });
    assert(text.includes('TZID:Europe/Lisbon'));
    assert(!text.includes('TZID:Asia/Tokyo'));
  });

  it('need not be one: whatever stands in the file, the sessions are exported', () => {
    for (const previous of ['', 'not a calendar', before.slice(0, 700), 'BEGIN:VCALENDAR\r\nEND:VCALENDAR'])
      assert.deepEqual(inShort(exported(notes, { ...later, previous })), inShort(before));
  });

  it('can be told from other files before it is written over', () => {
    const shifts =
      'BEGIN:VCALENDAR\r\nBEGIN:VEVENT\r\nUID:a\r\nDTSTART:20260302T060000\r\nEND:VEVENT\r\nEND:VCALENDAR';
    assert.equal(contentsOf(before, 'heron'), 'this-journal');
    assert.equal(contentsOf(before, 'wren'), 'another-journal');
    assert.equal(contentsOf(shifts, 'heron'), 'something-else');
    assert.equal(contentsOf('My diary', 'heron'), 'something-else');
    assert.equal(contentsOf(' \n', 'heron'), 'nothing');
    assert.equal(contentsOf(exported({ 'journal.md': '' }), 'heron'), 'this-journal');
  });
});

describe('a calendar of twelve weeks', () => {
  it('names every session once', () => {
    const notes: Record<string, string> = {};
    for (let day = dayNumber(date('2026-03-01')); day < dayNumber(date('2026-05-24')); day += 1) {
      const name = new Date(day * 86_400_000).toISOString().slice(0, 10);
      notes[`${name}.md`] = `- [ ] #session skill 0${day % 9}:30 45min\n- [ ] #session recovery\n`;
    }
    const uids = values(exported(notes, { last: '2026-05-23' }), 'UID');
    assert.equal(uids.length, 168);
    assert.equal(new Set(uids).size, 168);
  });
});
