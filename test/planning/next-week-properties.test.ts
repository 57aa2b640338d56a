import assert from 'node:assert/strict';
import fc from 'fast-check';
import { describe, it } from 'mocha';
import { JournalIndex } from '../../src/journal/journal-index';
import type { Note } from '../../src/journal/note';
import { openNote } from '../../src/journal/open-note';
import { addDays, dayNumber, isoDate } from '../../src/notation/time/iso-date';
import { addWeeks, isoWeekOf, mondayOf } from '../../src/notation/time/iso-week';
import { planNextWeek } from '../../src/planning/next-week';
import { checkWeek } from '../../src/training/check-week';
import type { FindingCode } from '../../src/training/finding';
import { anyJournalAround } from './any-journal';
import { assertNoneBroken, brokenRules } from './broken-rules';
import { applied, date, journalOf, type Notes } from './journal-of';

const today = date('2026-03-25');
const options = { today, zone: 'Europe/Berlin' };
const week = addWeeks(isoWeekOf(today), 1);
const monday = mondayOf(week);

const lacking: readonly FindingCode[] = ['week-under-minimum', 'no-recovery-session'];

/** A clock change lies between them. */
const weeksAround = [-1, 0, 1, 2].map((offset) => addWeeks(week, offset));

describe('writing next week’s notes into any journal', function () {
  this.timeout(120_000);
  it('breaks no rule, loses no word, leaves a note on every day, and adds nothing the second time', () => {
    let placed = 0;
    let leftOut = 0;
    fc.assert(
      fc.property(anyJournalAround(monday), (notes) => {
        const plan = planNextWeek(journalOf(notes), options);
        placed += plan.placed.length;
        leftOut += plan.leftOut.length;
        const after = applied(notes, plan.changes);
        assertNoneBroken(notes, after, weeksAround, options);
        if (plan.leftOut.length === 0 && plan.placed.length > 0) {
          const lacks = checkWeek(journalOf(after), week, options).filter(({ code }) =>
            lacking.includes(code),
          );
          assert.deepEqual(
            lacks.map(({ code }) => code),
            [],
          );
        }
        for (const change of plan.changes) {
          if (change.kind === 'create') continue;
          for (const { range } of change.edits) assert.equal(range.start, range.end);
        }
        if (plan.changes.length > 0)
          for (let offset = 0; offset < 7; offset += 1)
            assert.ok(journalOf(after).notesOf(monday + offset).length > 0);
        const again = planNextWeek(journalOf(after), options);
        assert.deepEqual(again.placed, []);
        assert.deepEqual(again.changes, []);
      }),
      { seed: 20260325, numRuns: 30 },
    );
    // The journals are not all so easy, and not all so hard, that nothing is shown.
    assert.ok(placed > 60, `${placed} placed`);
    assert.ok(leftOut > 10, `${leftOut} left out`);
  });
});

describe('finding a legal week', function () {
  this.timeout(120_000);
  /** Hours that hold one session each, on days of their own. */
  const slots = fc
    .uniqueArray(fc.integer({ min: 0, max: 6 }), { minLength: 2, maxLength: 4 })
    .chain((days) =>
      fc.tuple(
        ...days
          .sort()
          .map((day) =>
            fc.tuple(fc.constant(day), fc.constantFrom('07:00-08:00', '18:00-19:00', '20:00-21:00')),
          ),
      ),
    );
  const names = ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'];
  const wanted = fc.array(fc.constantFrom('flexibility', 'strength', 'skill'), {
    minLength: 2,
    maxLength: 4,
  });

  it('succeeds whenever trying every arrangement with the week check itself does', () => {
    let possible = 0;
    let impossible = 0;
    fc.assert(
      fc.property(
        slots,
        wanted,
        fc.constantFrom('', '- #rule hard gap:24h', '- #rule skill gap:40h'),
        fc.integer({ min: 1, max: 3 }),
        (open, kinds, extra, past) => {
          const rules = [
            ...open.map(([day, hour]) => `- #free ${names[day]} ${hour}`),
            ...[...new Set(kinds)].map(
              (one) => `- #need ${one} ${kinds.filter((other) => other === one).length}/week 60min 8/10`,
            ),
            '- #rule recovery min:0/week',
            extra,
          ].join('\n');
          const before: Notes = {
            'journal.md': rules,
            [`${addDays(isoDate(monday), -past)}.md`]: '- [ ] #session flexibility 20:30 60min 8/10\n',
          };
          const written = new Map<string, Note>();
          const noteAt = (slot: number, one: string): Note => {
            const [day, hour] = open[slot] ?? assert.fail();
            const path = `${isoDate(monday + day)}.md`;
            const key = `${path} ${one}`;
            const note =
              written.get(key) ?? openNote(path, `- [ ] #session ${one} ${hour.slice(0, 5)} 60min 8/10\n`);
            written.set(key, note);
            return note;
          };
          const isLegal = (arrangement: readonly number[]): boolean => {
            const journal = new JournalIndex();
            for (const [path, text] of Object.entries(before)) journal.replace(openNote(path, text));
            arrangement.forEach((slot, index) => {
              journal.replace(noteAt(slot, kinds[index] ?? assert.fail()));
            });
            return [week, addWeeks(week, 1)].every((one) =>
              checkWeek(journal, one, options).every(({ code }) => !brokenRules.includes(code)),
            );
          };
          const exists = (arrangement: readonly number[]): boolean => {
            if (arrangement.length === kinds.length) return isLegal(arrangement);
            return open.some((_, slot) => !arrangement.includes(slot) && exists([...arrangement, slot]));
          };
          const plan = planNextWeek(journalOf(before), options);
          const can = exists([]);
          if (can) possible += 1;
          else impossible += 1;
          assert.equal(plan.leftOut.length === 0, can);
          assert.equal(plan.placed.length + plan.leftOut.length, kinds.length);
          assert.ok(plan.placed.every(({ date: day }) => dayNumber(day) >= monday));
        },
      ),
      { seed: 7, numRuns: 40 },
    );
    assert.ok(possible >= 8 && impossible >= 8, `${possible} possible, ${impossible} impossible`);
  });
});
