import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import { reviewWeek } from '../../src/planning/week-review';
import { reviewDue, weekToReview } from '../../src/planning/week-review/review-due';
import { checkContext } from '../../src/training/week-under-check';
import { applied, date, journalOf, type Notes } from './journal-of';

/** Sessions on each Monday from 2025-12-29 to 2026-03-09, all done. */
function mondays(more: Notes = {}): Notes {
  const notes: Record<string, string> = {};
  for (
    let day = Date.parse('2025-12-29T00:00Z');
    day <= Date.parse('2026-03-09T00:00Z');
    day += 7 * 86_400_000
  )
    notes[`${new Date(day).toISOString().slice(0, 10)}.md`] = '- [x] #session skill 18:00 45min 5/10\n';
  return { ...notes, ...more };
}

const contextOf = (notes: Notes, today: string) =>
  checkContext(journalOf(notes), { today: date(today), zone: 'UTC' });

/** What one is reminded of on each day of a week, blank for nothing. */
function reminders(notes: Notes, monday: number, month = '2026-02'): readonly string[] {
  return Array.from({ length: 8 }, (_, offset) => {
    const due = reviewDue(contextOf(notes, `${month}-${String(monday + offset).padStart(2, '0')}`));
    return due ? `${due.week}${due.earlyInBlock === undefined ? '' : ` early, ${due.earlyInBlock}`}` : '';
  });
}

describe('the reminder to look back on a week', () => {
  it('comes on Saturday, and stays until Monday', () => {
    assert.deepEqual(reminders(mondays(), 16), [
      '2026-W07',
      '',
      '',
      '',
      '',
      '2026-W08',
      '2026-W08',
      '2026-W08',
    ]);
  });

  // Common practice, no source.
  it('comes on Thursday in weeks three and four, seven and eight of a new block, and in no other', () => {
    const notes = mondays({ 'goals.md': '- #goal low-split from:2026-01-06 by:2026-06-14\n' });
    // 2026-01-05 is the Monday of the block's first week.
    const early = Array.from({ length: 9 }, (_, index) => {
      const thursday = new Date(Date.parse('2026-01-08T00:00Z') + 7 * index * 86_400_000);
      return reviewDue(contextOf(notes, thursday.toISOString().slice(0, 10)))?.earlyInBlock;
    });
    assert.deepEqual(early, [undefined, undefined, 3, 4, undefined, undefined, 7, 8, undefined]);
    assert.deepEqual(reminders(notes, 16), [
      '2026-W07',
      '',
      '',
      '2026-W08 early, 7',
      '2026-W08 early, 7',
      '2026-W08',
      '2026-W08',
      '2026-W08',
    ]);
  });

  it('is about the week that the command then writes', () => {
    const notes = mondays({ 'goals.md': '- #goal low-split from:2026-01-06 by:2026-06-14\n' });
    for (const day of ['2026-02-19', '2026-02-20', '2026-02-21', '2026-02-22', '2026-02-23']) {
      const context = contextOf(notes, day);
      assert.equal(weekToReview(context), reviewDue(context)?.week, day);
    }
    assert.equal(weekToReview(contextOf(notes, '2026-02-18')), '2026-W07');
    assert.equal(weekToReview(contextOf(mondays(), '2026-02-19')), '2026-W07');
  });

  it('goes once the facts are written, and comes for no week without a session behind it', () => {
    const options = { today: date('2026-02-21'), zone: 'UTC' };
    const written = applied(mondays(), reviewWeek(journalOf(mondays()), options).changes);
    assert.equal(reviewDue(contextOf(written, '2026-02-21')), undefined);
    assert.ok(reviewDue(contextOf({ ...mondays(), '2026-W08.md': 'Own words.\n' }, '2026-02-21')));
    const { '2026-02-16.md': _, ...without } = mondays();
    assert.equal(reviewDue(contextOf(without, '2026-02-21')), undefined);
    assert.equal(reviewDue(contextOf({ 'journal.md': '' }, '2026-02-21')), undefined);
  });
});
