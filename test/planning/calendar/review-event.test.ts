import assert from 'node:assert/strict';
import ICAL from 'ical.js';
import { describe, it } from 'mocha';
import nodeIcal from 'node-ical';
import { readBusyCalendar } from '../../../src/journal/calendar/busy-calendar';
import { dayNumber } from '../../../src/notation/time/iso-date';
import { contentsOf } from '../../../src/planning/calendar/previous-export';
import { date } from '../journal-of';
import { eventsOf, exported, inShort, values } from './exports';

const sunday = { weekday: 7, at: 18 * 60 } as const;

describe('the look back in an exported calendar', () => {
  const notes = { '2026-03-03.md': '- [ ] #session flexibility 18:30 75min 7/10\n' };

  it('stands on its day of every week of the span, ten minutes long, and takes no time', () => {
    const text = exported(notes, { review: sunday });
    assert.deepEqual(inShort(text), [
      'review-2026-W09 0 confirmed 20260301T180000',
      'session-2026-03-03-flexibility-1 0 confirmed 20260303T183000',
      'review-2026-W10 0 confirmed 20260308T180000',
      'review-2026-W11 0 confirmed 20260315T180000',
      'review-2026-W12 0 confirmed 20260322T180000',
      'review-2026-W13 0 confirmed 20260329T180000',
    ]);
    const [first] = eventsOf(text);
    assert.ok(first?.includes('DURATION:PT10M') && first.includes('TRANSP:TRANSPARENT'), first?.join('\n'));
    assert.equal(values(text, 'SUMMARY')[0], 'Look back on the week\\, plan the next');
    assert.deepEqual(inShort(exported(notes)).length, 1);
  });

  it('reminds of itself by the setting for alarms, and not of a day that is over', () => {
    const alarms = values(exported({}, { review: sunday, alarmMinutes: 15, today: '2026-03-09' }), 'TRIGGER');
    assert.deepEqual(alarms, ['', '', '-PT15M', '-PT15M', '-PT15M']);
    assert.deepEqual(new Set(values(exported({}, { review: sunday }), 'TRIGGER')), new Set(['']));
  });

  it('keeps its identifier when its day or time changes, and is cancelled when it is switched off', () => {
    const previous = exported(notes, { review: sunday, last: '2026-03-08' });
    const later = { previous, stamp: '2026-03-02T08:00Z', last: '2026-03-08' };
    assert.equal(exported(notes, { ...later, review: sunday }), previous);
    assert.deepEqual(
      inShort(exported(notes, { ...later, first: '2026-03-02', review: { weekday: 6, at: 600 } })),
      [
        'session-2026-03-03-flexibility-1 0 confirmed 20260303T183000',
        'review-2026-W10 1 confirmed 20260307T100000',
      ],
    );
    assert.deepEqual(inShort(exported(notes, later)), [
      'review-2026-W09 1 cancelled 20260301T180000',
      'session-2026-03-03-flexibility-1 0 confirmed 20260303T183000',
      'review-2026-W10 1 cancelled 20260308T180000',
    ]);
  });

  it('is known as our own: it makes nobody busy, and may be written over', () => {
    const text = exported({}, { review: sunday });
    const taken = (file: string) => {
      const calendar = readBusyCalendar(file);
      assert.deepEqual(calendar.problems, []);
      return calendar.between(dayNumber(date('2026-03-01')), dayNumber(date('2026-03-31')), 'Europe/Lisbon')
        .spans.length;
    };
    // Some calendars hand back every event as taken time.
    const opaque = text.replaceAll('TRANSP:TRANSPARENT', 'TRANSP:OPAQUE');
    assert.equal(taken(opaque), 0);
    assert.equal(taken(opaque.replaceAll('@markdown-training-journal.invalid', '@example.org')), 5);
    assert.equal(contentsOf(text, 'heron'), 'this-journal');
    assert.equal(contentsOf(text, 'wren'), 'another-journal');
  });

  // Read back with two libraries that know nothing of this program [C].
  it('reads the same in ical.js and node-ical, and two imports leave one event a week', () => {
    const text = exported({}, { review: sunday, alarmMinutes: 15 });
    const component = new ICAL.Component(ICAL.parse(text));
    const events = component.getAllSubcomponents('vevent').map((one) => new ICAL.Event(one));
    const minute = (event: ICAL.Event) => [event.startDate.toString(), event.duration.toSeconds() / 60];
    // Summer time begins in Lisbon on 2026-03-29; the clock shows six all the same.
    assert.deepEqual(events.map(minute), [
      ['2026-03-01T18:00:00', 10],
      ['2026-03-08T18:00:00', 10],
      ['2026-03-15T18:00:00', 10],
      ['2026-03-22T18:00:00', 10],
      ['2026-03-29T18:00:00', 10],
    ]);
    const instants = (imported: string) =>
      Object.values(nodeIcal.sync.parseICS(imported)).flatMap((one) =>
        one?.type === 'VEVENT' ? [one.start.toISOString()] : [],
      );
    assert.deepEqual(instants(text), [
      '2026-03-01T18:00:00.000Z',
      '2026-03-08T18:00:00.000Z',
      '2026-03-15T18:00:00.000Z',
      '2026-03-22T18:00:00.000Z',
      '2026-03-29T17:00:00.000Z',
    ]);
    // Calendars tell events by their identifiers: what an importer keeps of both files is one a week.
    const again = exported(
      {},
      { review: { ...sunday, at: 17 * 60 }, previous: text, stamp: '2026-03-02T08:00Z' },
    );
    const kept = new Map<string, string>();
    for (const file of [text, again])
      for (const event of eventsOf(file))
        kept.set(event.find((line) => line.startsWith('UID:')) ?? '', event.join());
    assert.equal(kept.size, 5);
    assert.equal(events.length, 5);
  });
});
