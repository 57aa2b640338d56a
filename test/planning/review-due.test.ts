import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import { addWeeks } from '../../src/notation/time/iso-week';
import { reviewWeek } from '../../src/planning/week-review';
import {
  type ReviewDay,
  reviewDue,
  weekToPlan,
  weekToReview,
} from '../../src/planning/week-review/review-due';
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

/** What one is reminded of on each day from Monday, 2026-02-16, to Monday, 2026-02-23; blank for nothing. */
function reminders(notes: Notes, day?: ReviewDay): readonly string[] {
  return Array.from({ length: 8 }, (_, offset) => {
    const due = reviewDue(contextOf(notes, `2026-02-${16 + offset}`), day);
    return due ? `${due.week}${due.earlyInBlock === undefined ? '' : ` early, ${due.earlyInBlock}`}` : '';
  });
}

describe('the reminder to look back on a week', () => {
  it('comes on Sunday, and stays to the middle of the next week', () => {
    assert.deepEqual(reminders(mondays()), [
      '2026-W07',
      '2026-W07',
      '2026-W07',
      '',
      '',
      '',
      '2026-W08',
      '2026-W08',
    ]);
  });

  for (const [day, expected] of [
    ['off', ['', '', '', '', '', '', '', '']],
    [1, ['2026-W07', '2026-W07', '2026-W07', '', '', '', '', '2026-W08']],
    [3, ['', '', '2026-W07', '2026-W07', '2026-W07', '', '', '']],
    [4, ['2026-W07', '2026-W07', '2026-W07', '2026-W08', '2026-W08', '2026-W08', '2026-W08', '2026-W08']],
    [6, ['2026-W07', '2026-W07', '2026-W07', '', '', '2026-W08', '2026-W08', '2026-W08']],
  ] as const) {
    it(`comes on the day that was chosen: ${day}`, () => {
      assert.deepEqual(reminders(mondays(), day), expected);
    });
  }

  // Common practice, no source.
  it('comes on Thursday in weeks three and four, seven and eight of a new block, and in no other', () => {
    const notes = mondays({ 'goals.md': '- #goal low-split from:2026-01-06 by:2026-06-14\n' });
    // 2026-01-05 is the Monday of the block's first week.
    const early = Array.from({ length: 9 }, (_, index) => {
      const thursday = new Date(Date.parse('2026-01-08T00:00Z') + 7 * index * 86_400_000);
      return reviewDue(contextOf(notes, thursday.toISOString().slice(0, 10)))?.earlyInBlock;
    });
    assert.deepEqual(early, [undefined, undefined, 3, 4, undefined, undefined, 7, 8, undefined]);
    assert.deepEqual(reminders(notes), [
      '2026-W07',
      '2026-W07',
      '2026-W07',
      '2026-W08 early, 7',
      '2026-W08 early, 7',
      '2026-W08 early, 7',
      '2026-W08',
      '2026-W08',
    ]);
  });

  it('is about the week that the command then writes, on each day and for each choice', () => {
    const notes = mondays({ 'goals.md': '- #goal low-split from:2026-01-06 by:2026-06-14\n' });
    let reminded = 0;
    for (const day of [1, 2, 3, 4, 5, 6, 7] as const)
      for (let offset = 0; offset < 14; offset += 1) {
        const context = contextOf(notes, `2026-02-${String(9 + offset).padStart(2, '0')}`);
        const due = reviewDue(context, day);
        if (!due) continue;
        reminded += 1;
        assert.equal(weekToReview(context, day), due.week, `${context.today}, day ${day}`);
        // What is planned then is never a week that is over, and always the one behind.
        assert.equal(weekToPlan(context, day), addWeeks(due.week, 1), `${context.today}, day ${day}`);
      }
    assert.ok(reminded > 40);
    assert.equal(weekToReview(contextOf(notes, '2026-02-18')), '2026-W07');
    assert.equal(weekToReview(contextOf(mondays(), '2026-02-19')), '2026-W07');
  });

  it('plans the next week once little is left of the running one', () => {
    const planned = (today: string) => weekToPlan(contextOf(mondays(), today));
    assert.equal(planned('2026-02-18'), '2026-W08');
    assert.equal(planned('2026-02-19'), '2026-W09');
    assert.equal(planned('2026-02-22'), '2026-W09');
  });

  it('goes once the facts are written, and comes for no week without a session behind it', () => {
    const options = { today: date('2026-02-22'), zone: 'UTC' };
    const written = applied(mondays(), reviewWeek(journalOf(mondays()), options).changes);
    assert.equal(reviewDue(contextOf(written, '2026-02-22')), undefined);
    assert.ok(reviewDue(contextOf({ ...mondays(), '2026-W08.md': 'Own words.\n' }, '2026-02-22')));
    const { '2026-02-16.md': _, ...without } = mondays();
    assert.equal(reviewDue(contextOf(without, '2026-02-22')), undefined);
    assert.equal(reviewDue(contextOf({ 'journal.md': '' }, '2026-02-22')), undefined);
  });
});
