import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import { dayNumber, isoDate } from '../../src/notation/time/iso-date';
import { planNextWeek } from '../../src/planning/next-week';
import { starterJournal } from '../../src/planning/starter-journal';
import { checkJournal } from '../../src/training/check-journal';
import { applied, changed, date, journalOf } from './journal-of';

function starter(day: string, root = '') {
  return changed({}, starterJournal({ root, today: date(day), zone: 'Europe/Lisbon', exists: () => false }));
}

describe('the starter journal', () => {
  it('has a note each for journal, goals, routines, rules and hours, and today’s', () => {
    assert.deepEqual(Object.keys(starter('2026-02-24')), [
      'journal.md',
      'goals.md',
      'routines.md',
      'rules.md',
      'hours.md',
      '2026-02-24.md',
    ]);
    assert.ok('heron/2026-02-24.md' in starter('2026-02-24', 'heron'));
  });

  it('leaves files alone that stand already', () => {
    const changes = starterJournal({
      root: 'heron',
      today: date('2026-02-24'),
      exists: (path) => path === 'heron/goals.md' || path === 'heron/2026-02-24.md',
    });
    assert.deepEqual(
      changes.map(({ note }) => note),
      ['heron/journal.md', 'heron/routines.md', 'heron/rules.md', 'heron/hours.md'],
    );
  });

  it('is read without a problem, with one whole goal, on every day of a week', () => {
    for (let offset = 0; offset < 7; offset += 1) {
      const today = isoDate(dayNumber(date('2026-02-23')) + offset);
      const journal = journalOf(starter(today));
      for (const note of journal.notes())
        assert.deepEqual(note.reading.problems, [], `${note.path} on ${today}`);
      const [goal] = [...journal.plan.goals.values()];
      assert.equal(goal?.whys.length, 1);
      assert.equal(goal?.metrics.length, 1);
      assert.equal(goal?.steps.length, 1);
      assert.deepEqual(
        goal?.needs.map((need) => need.kind),
        ['flexibility', 'strength'],
      );
      assert.equal(goal?.by, '2026-06-21');
      assert.equal(journal.plan.zone, 'Europe/Lisbon');
      for (const need of journal.plan.needs) assert.ok(journal.plan.routines.has(need.routine ?? ''));
    }
  });

  it('gives no finding, and its next week can be written whole, on every day of a week', () => {
    for (let offset = 0; offset < 7; offset += 1) {
      const today = isoDate(dayNumber(date('2026-02-23')) + offset);
      const notes = starter(today);
      const options = { today, zone: 'Europe/Lisbon' };
      assert.deepEqual(checkJournal(journalOf(notes), options), [], today);
      const week = planNextWeek(journalOf(notes), options);
      assert.deepEqual(week.placed.map(({ kind }) => kind).sort(), [
        'flexibility',
        'flexibility',
        'recovery',
        'strength',
      ]);
      assert.deepEqual(week.leftOut, []);
      assert.equal(week.changes.length, 7);
      const after = journalOf(applied(notes, week.changes));
      assert.deepEqual(checkJournal(after, options), [], today);
    }
  });
});
