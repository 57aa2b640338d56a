/**
 * Exported calendars, seen from outside.
 *
 * Folding: RFC 5545, section 3.1: lines of at most 75 octets, the break left out, folded with a line break and a space,
 * no character cut [R rfc5545.txt]; sizes of six lines recomputed with another language's library [C].
 *
 * Text: the example of section 3.3.11 [R].
 *
 * Whole files: read back with ical.js and node-ical, which know nothing of this program, on random journals (seeded).
 * Definitions of zones: against the IANA time zone database as this machine has it [C].
 */
import assert from 'node:assert/strict';
import fc from 'fast-check';
import ICAL from 'ical.js';
import nodeIcal from 'node-ical';
import { readBusyCalendar } from '../../src/journal/calendar/busy-calendar';
import { readComponents } from '../../src/journal/calendar/component';
import { contentLines } from '../../src/journal/calendar/content-lines';
import { readZoneClocks } from '../../src/journal/calendar/time-zones';
import { namedClock } from '../../src/journal/calendar/zone-clock';
import { dayNumber, isoDate } from '../../src/notation/time/iso-date';
import { instantOf } from '../../src/notation/time/zoned-time';
import { foldLine, textLine } from '../../src/planning/calendar/property-lines';
import { timeZoneLines } from '../../src/planning/calendar/time-zone-lines';
import { moveSession, type SessionPlace, skipSession } from '../../src/planning/session-changes';
import { exported } from '../planning/calendar/exports';
import { applied, date, journalOf, type Notes } from '../planning/journal-of';

const octets = (text: string) => new TextEncoder().encode(text).length;
const sizes = (line: string) => foldLine(line).split('\r\n').map(octets);

describe('folding (RFC 5545, 3.1)', () => {
  for (const [what, line, expected] of [
    ['75 octets stay whole', `SUMMARY:${'a'.repeat(67)}`, [75]],
    ['76 do not', `SUMMARY:${'a'.repeat(68)}`, [75, 2]],
    ['a letter of two octets is not cut', `SUMMARY:${'a'.repeat(66)}é`, [74, 3]],
    ['nor moved without need', `SUMMARY:${'a'.repeat(67)}é`, [75, 3]],
    ['nor is one of four', `SUMMARY:${'x'.repeat(64)}😀😀`, [72, 9]],
    ['the space in front counts', `DESCRIPTION:${'b'.repeat(200)}`, [75, 75, 64]],
  ] as const) {
    it(`${what}: ${JSON.stringify(expected)} [C]`, () => {
      assert.deepEqual(sizes(line), expected);
    });
  }

  it('any text comes back whole, in lines of 75 octets at most', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme', maxLength: 300 }), (text) => {
        const line = textLine('SUMMARY', text);
        const folded = foldLine(line);
        for (const piece of folded.split('\r\n')) assert(octets(piece) <= 75);
        assert.equal(folded.replaceAll('\r\n ', ''), line);
        const property = new ICAL.Component(
          ICAL.parse(`BEGIN:VEVENT\r\n${folded}\r\nEND:VEVENT`),
        ).getFirstPropertyValue('summary');
        assert.equal(property, text.replace(/\r\n?/g, '\n').replace(/[^\P{Cc}\t\n]/gu, ''));
      }),
      { seed: 20260305, numRuns: 500 },
    );
  });
});

it('text is escaped as in the example of RFC 5545, 3.3.11 [R]', () => {
  assert.equal(
    textLine('DESCRIPTION', 'Project XYZ Final Review\nConference Room - 3B\nCome Prepared.'),
    'DESCRIPTION:Project XYZ Final Review\\nConference Room - 3B\\nCome Prepared.',
  );
  assert.equal(textLine('SUMMARY', 'a\\n;b,c:d"e'), 'SUMMARY:a\\\\n\\;b\\,c:d"e');
});

describe('the definition of a zone in an export', () => {
  for (const zone of Intl.supportedValuesOf('timeZone')
    .filter((_, index) => index % 7 === 0)
    .concat(
      'Africa/Casablanca',
      'America/Vancouver',
      'Australia/Lord_Howe',
      'Europe/Dublin',
      'Asia/Kathmandu',
      'Africa/Cairo',
      'Asia/Calcutta',
    )) {
    it(`of ${zone} is right on each of its days [C]`, () => {
      const first = dayNumber(date('2026-02-01'));
      const last = dayNumber(date('2026-04-30'));
      const text = ['BEGIN:VCALENDAR', ...timeZoneLines(zone, first, last), 'END:VCALENDAR'].join('\r\n');
      const { clocks, problems } = readZoneClocks(readComponents(contentLines(text)).calendars);
      assert.deepEqual(problems, []);
      assert(text.includes(`TZID:${zone}\r\n`));
      const clock = clocks.clockOf(zone);
      const known = namedClock(zone);
      for (let instant = first * 1440; instant < (last + 1) * 1440; instant += 60)
        assert.equal(
          clock?.offsetAt(instant),
          known.offsetAt(instant),
          new Date(instant * 60_000).toISOString(),
        );
    });
  }
});

const zones = ['Europe/Lisbon', 'America/New_York', 'Asia/Kathmandu', 'Africa/Casablanca'] as const;
const kinds = ['flexibility', 'strength', 'skill', 'übung'] as const;

/** One line of a session: kind, whether it has a time, minutes, whether it is done, a place. */
const sessions = fc.record({
  day: fc.integer({ min: 0, max: 41 }),
  kind: fc.constantFrom(...kinds),
  start: fc.option(fc.integer({ min: 0, max: 95 }), { nil: undefined }),
  minutes: fc.option(fc.constantFrom(30, 45, 75, 120), { nil: undefined }),
  done: fc.boolean(),
  where: fc.option(fc.constantFrom('studio', 'home'), { nil: undefined }),
});

/** What happens to one of the sessions afterwards. */
const steps = fc.record({
  pick: fc.nat(),
  do: fc.constantFrom('move', 'skip', 'remove'),
  to: fc.integer({ min: 0, max: 41 }),
});

const firstDay = dayNumber(date('2026-02-16'));

function clockText(quarter: number): string {
  const minutes = quarter * 15;
  return `${String(Math.floor(minutes / 60)).padStart(2, '0')}:${String(minutes % 60).padStart(2, '0')}`;
}

function notesOf(
  list: readonly (typeof sessions extends fc.Arbitrary<infer Value> ? Value : never)[],
): Notes {
  const notes: Record<string, string> = { 'journal.md': '# Journal, with, signs; and \\ more\n' };
  for (const { day, kind, start, minutes, done, where } of list) {
    const path = `${isoDate(firstDay + day)}.md`;
    const fields = [
      ...(start === undefined ? [] : [clockText(start)]),
      ...(minutes === undefined ? [] : [`${minutes}min`]),
      ...(where === undefined ? [] : [`where:${where}`]),
    ];
    notes[path] =
      `${notes[path] ?? ''}- [${done ? 'x' : ' '}] #session ${[kind, ...fields].join(' ')}\n  - Hold 3x60s, slowly; breathe\n`;
  }
  return notes;
}

function after(
  notes: Notes,
  { pick, do: what, to }: typeof steps extends fc.Arbitrary<infer V> ? V : never,
): Notes {
  const journal = journalOf(notes);
  const all = journal.sessions(firstDay, firstDay + 41).filter(({ entry }) => !entry.moved && !entry.skipped);
  const session: SessionPlace | undefined = all[pick % Math.max(1, all.length)];
  if (!session) return notes;
  if (what === 'move') return applied(notes, moveSession(journal, session, { date: isoDate(firstDay + to) }));
  if (what === 'skip') return applied(notes, skipSession(journal, session, 'ill'));
  return Object.fromEntries(Object.entries(notes).filter(([path]) => path !== session.note));
}

/** The events of a file as ical.js reads them: when, in which state. */
function readByIcal(text: string) {
  const calendar = new ICAL.Component(ICAL.parse(text));
  return calendar.getAllSubcomponents('vevent').map((component) => {
    const event = new ICAL.Event(component);
    return {
      uid: event.uid,
      sequence: event.sequence,
      status: String(component.getFirstPropertyValue('status')),
      allDay: event.startDate.isDate,
      start: event.startDate.toUnixTime() / 60,
      end: event.endDate.toUnixTime() / 60,
      day: `${event.startDate.year}-${String(event.startDate.month).padStart(2, '0')}-${String(event.startDate.day).padStart(2, '0')}`,
      description: event.description,
      component,
    };
  });
}

describe('an exported calendar', () => {
  it('says to two other libraries what the notes say [C]', () => {
    fc.assert(
      fc.property(fc.array(sessions, { maxLength: 8 }), fc.constantFrom(...zones), (list, zone) => {
        const notes = notesOf(list);
        const text = exported(notes, { zone, first: '2026-02-16', last: '2026-03-29', alarmMinutes: 20 });
        assert(text.endsWith('END:VCALENDAR\r\n'));
        assert(!/[^\r]\n/.test(text));
        const theirs = readByIcal(text);
        const byNode = Object.values(nodeIcal.sync.parseICS(text)).filter((part) => part?.type === 'VEVENT');
        const standing = journalOf(notes).sessions(firstDay, firstDay + 41);
        assert.equal(theirs.length, standing.length);
        assert.equal(byNode.length, standing.length);
        const expected = standing
          .map(({ date: day, entry }) => {
            const start = entry.span?.value.start;
            if (start === undefined) return `${day} all day`;
            const begin = instantOf(day, start, zone);
            return `${begin} ${begin + (entry.length?.value.minutes ?? 0)}`;
          })
          .sort();
        // ical.js reads a time that a clock shows twice as the later one, and one that it skips as earlier.
        const isPlain =
          zone === 'Asia/Kathmandu' ||
          zone === 'Africa/Casablanca' ||
          !list.some(({ start = 40 }) => start < 16);
        if (isPlain) {
          assert.deepEqual(
            theirs.map((one) => (one.allDay ? `${one.day} all day` : `${one.start} ${one.end}`)).sort(),
            expected,
          );
          assert.deepEqual(
            byNode
              .flatMap((one) => {
                if (one?.type !== 'VEVENT') return [];
                if (one.datetype === 'date') {
                  const { start } = one;
                  const day = new Date(Date.UTC(start.getFullYear(), start.getMonth(), start.getDate()));
                  return [`${day.toISOString().slice(0, 10)} all day`];
                }
                return [`${one.start.getTime() / 60_000} ${(one.end ?? one.start).getTime() / 60_000}`];
              })
              .sort(),
            expected,
          );
        }
        for (const { description, component, allDay } of theirs) {
          assert(description.endsWith('- Hold 3x60s, slowly; breathe'), description);
          assert.equal(
            new Set(component.getAllProperties().map(({ name }) => name)).size,
            component.getAllProperties().length,
          );
          assert.equal(allDay && component.getAllSubcomponents('valarm').length > 0, false);
        }
        // What this program has exported takes none of its own time.
        const back = readBusyCalendar(text);
        assert.deepEqual(back.problems, []);
        assert.deepEqual(back.between(firstDay - 1, firstDay + 50, zone), { spans: [], days: [] });
      }),
      { seed: 20260306, numRuns: 60 },
    );
  }).timeout(60_000);

  it('is taken once however often it is imported, and follows the notes', () => {
    fc.assert(
      fc.property(
        fc.array(sessions, { minLength: 1, maxLength: 6 }),
        fc.array(steps, { maxLength: 4 }),
        (list, changes) => {
          /** A phone's calendar: events by identifier; an import replaces what is older. */
          const phone = new Map<string, ReturnType<typeof readByIcal>[number]>();
          const take = (text: string) => {
            for (const event of readByIcal(text)) {
              const known = phone.get(event.uid);
              if (!known || known.sequence <= event.sequence) phone.set(event.uid, event);
            }
          };
          let notes = notesOf(list);
          const asked = { first: '2026-02-16', last: '2026-03-29' };
          let text = exported(notes, asked);
          take(text);
          const once = phone.size;
          take(text);
          assert.equal(phone.size, once);
          for (const [index, change] of changes.entries()) {
            notes = after(notes, change);
            text = exported(notes, { ...asked, previous: text, stamp: `2026-03-0${index + 2}T08:00Z` });
            take(text);
            take(text);
          }
          const inPhone = [...phone.values()]
            .filter(({ status }) => status === 'CONFIRMED')
            .map(({ day, component }) => `${day} ${component.getFirstPropertyValue('summary')}`);
          const inNotes = journalOf(notes)
            .sessions(firstDay, firstDay + 41)
            .filter(({ entry, movedFrom }) => !entry.skipped && (!entry.moved || movedFrom !== undefined))
            .map(({ date: day, kind }) => `${day} ${kind}`);
          assert.deepEqual(inPhone.sort(), inNotes.sort());
        },
      ),
      { seed: 20260307, numRuns: 60 },
    );
  }).timeout(60_000);
});
