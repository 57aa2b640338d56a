import assert from 'node:assert/strict';
import fc from 'fast-check';
import { describe, it } from 'mocha';
import { isoDate } from '../../src/notation/time/iso-date';
import { addWeeks, isoWeekOf, mondayOf } from '../../src/notation/time/iso-week';
import { planWeeks, rearrangeWeek } from '../../src/planning/plan-weeks';
import { anyJournalAround } from './any-journal';
import { assertNoneBroken } from './broken-rules';
import { applied, date, journalOf, type Notes } from './journal-of';

/** A clock change lies in the first of the planned weeks. */
const today = date('2026-03-22');
const options = { today, zone: 'Europe/Berlin' };
const current = isoWeekOf(today);
const weeks = [1, 2].map((ahead) => addWeeks(current, ahead));

/** A search that is cut short must break as little as one that ends. */
const nodeLimit = 20_000;

const weeksAround = [-1, 0, 1, 2, 3].map((ahead) => addWeeks(current, ahead));

describe('planning two weeks of any journal', function () {
  this.timeout(300_000);
  it('breaks no rule, and adds nothing the second time once it is proven best', () => {
    let placed = 0;
    let impossible = 0;
    let proven = 0;
    fc.assert(
      fc.property(anyJournalAround(mondayOf(weeks[0] ?? current)), (notes) => {
        const plan = planWeeks(journalOf(notes), { ...options, weeks, nodeLimit });
        placed += plan.placed.length;
        if (plan.status === 'impossible') {
          impossible += 1;
          assert.ok(plan.leftOut.length > 0);
          if (plan.conflict) assert.ok(plan.conflict.sentence.template.length > 0);
        }
        const after = applied(notes, plan.changes);
        assertNoneBroken(notes, after, weeksAround, options);
        const again = planWeeks(journalOf(after), { ...options, weeks, nodeLimit, explain: false });
        if (!plan.isProven) return;
        proven += 1;
        assert.deepEqual([again.placed, again.changes], [[], []]);
      }),
      { seed: 11, numRuns: 15 },
    );
    assert.ok(placed > 60, `${placed} placed`);
    assert.ok(impossible > 3, `${impossible} impossible`);
    assert.ok(proven > 5, `${proven} proven`);
  });
});

describe('arranging the rest of any week anew', function () {
  this.timeout(300_000);
  const midweek = { ...options, today: date('2026-03-18') };
  const monday = mondayOf(current);
  /** Planned sessions of the week that is running: some missed, some to come, some agreed with somebody. */
  const running = fc
    .array(
      fc.tuple(
        fc.integer({ min: 0, max: 6 }),
        fc.constantFrom('flexibility', 'strength', 'skill'),
        fc.constantFrom('18:00 60min', '19:30 60min'),
        fc.constantFrom('4/10', '8/10', '8/10 with:coach'),
      ),
      { minLength: 2, maxLength: 4 },
    )
    .map((sessions): Notes => {
      const notes: Record<string, string> = {};
      for (const [offset, kind, time, rest] of sessions)
        notes[`${isoDate(monday + offset)}.md`] = `- [ ] #session ${kind} ${time} ${rest}\n  - body\n`;
      return notes;
    });

  it('adds no finding, leaves what is agreed, loses no word, and does nothing the second time once it is proven best', () => {
    let moved = 0;
    let proven = 0;
    fc.assert(
      fc.property(fc.tuple(anyJournalAround(monday), running), ([journal, sessions]) => {
        const notes = { ...journal, ...sessions };
        const plan = rearrangeWeek(journalOf(notes), midweek);
        moved += plan.placed.filter(({ from }) => from).length;
        const after = applied(notes, plan.changes);
        assertNoneBroken(notes, after, weeksAround, midweek);
        for (const { from } of plan.placed)
          assert.ok(!from || from.date < midweek.today || from.entry.with.length === 0);
        for (const change of plan.changes) {
          if (change.kind === 'create') continue;
          // A time may be replaced; nothing else is taken away.
          for (const { range } of change.edits) assert.ok(range.end - range.start <= 11);
        }
        // What was found in several rounds, or was cut short, may still be bettered by the next look.
        if (!plan.isProven) return;
        proven += 1;
        const again = rearrangeWeek(journalOf(after), { ...midweek, explain: false });
        assert.deepEqual([again.placed, again.changes], [[], []]);
      }),
      { seed: 12, numRuns: 20 },
    );
    assert.ok(moved > 10, `${moved} moved`);
    assert.ok(proven > 5, `${proven} proven`);
  });
});
