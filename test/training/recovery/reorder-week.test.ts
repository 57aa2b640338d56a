import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import { fillMessage } from '../../../src/training/finding';
import {
  type ReorderOptions,
  type ReorderSuggestion,
  reorderWeek,
} from '../../../src/training/recovery/reorder-week';
import { checkContext } from '../../../src/training/week-under-check';
import { date, week } from '../dates';
import { journalFromNotes } from '../journal-from-text';

function reorder(
  notes: Readonly<Record<string, string>>,
  today: string,
  options?: ReorderOptions,
): ReorderSuggestion | undefined {
  const context = checkContext(journalFromNotes(notes), { today: date(today), zone: 'UTC' });
  return reorderWeek(context, context.weeks(week('2026-W09')).sessions, options);
}

const order = (found: ReorderSuggestion | undefined) =>
  found?.order.map(({ date: on, kind }) => `${on.slice(8)} ${kind}`);

/** Every session may move: the week is over, and the next one like it is meant. */
const all: ReorderOptions = { mayMove: () => true };

describe('a better order of the week', () => {
  // Common practice, no source.
  it('turns flexibility, flexibility, strength into flexibility, strength, flexibility after soreness on day two', () => {
    const notes = {
      '2026-02-23.md': '- [x] #session flexibility 18:30 75min 6/10\n',
      '2026-02-24.md': '- [x] #session flexibility 18:30 75min 6/10\n- #sore hamstrings 5/10\n',
      '2026-02-25.md': '- [x] #session strength 18:30 60min 6/10\n',
    };
    const found = reorder(notes, '2026-03-02', all);
    assert.deepEqual(order(found), ['23 flexibility', '24 strength', '25 flexibility']);
    assert.deepEqual(found?.reasons.map(fillMessage), [
      "Sore on Tuesday, 22 h 45 min after Monday's flexibility session: hamstrings",
    ]);
    assert.deepEqual(found.lackingHours, { now: 12, after: 0 });
  });

  it('does the same without times, and on the evening of day two with the third still to come', () => {
    const notes = {
      '2026-02-23.md': '- [x] #session flexibility\n',
      '2026-02-24.md': '- [ ] #session flexibility\n- #sore hamstrings 5/10\n',
      '2026-02-25.md': '- [ ] #session strength\n',
    };
    // Skipped for being sore is what the notes then say of it.
    const skipped = { ...notes, '2026-02-24.md': '- [ ] #session flexibility skipped:sore\n' };
    assert.deepEqual(order(reorder(skipped, '2026-02-24', all)), [
      '23 flexibility',
      '24 strength',
      '25 flexibility',
    ]);
    assert.deepEqual(order(reorder(notes, '2026-02-24')), [
      '23 flexibility',
      '24 strength',
      '25 flexibility',
    ]);
  });

  it('says nothing when nobody is sore and no rule is broken', () => {
    const notes = {
      '2026-02-23.md': '- [x] #session flexibility 18:30 75min 6/10\n',
      '2026-02-24.md': '- [x] #session flexibility 18:30 75min 6/10\n',
      '2026-02-25.md': '- [x] #session strength 18:30 60min 6/10\n',
    };
    assert.equal(reorder(notes, '2026-03-02', all), undefined);
  });

  it('does not care for soreness that the second session asked nothing of', () => {
    const notes = {
      'r.md':
        '- #routine legs flexibility regions:hamstrings\n- #routine arms flexibility regions:shoulders\n',
      '2026-02-23.md': '- [x] #session flexibility 18:30 75min 6/10 routine:legs\n',
      '2026-02-24.md': '- [x] #session flexibility 18:30 75min 6/10 routine:arms\n- #sore hamstrings 5/10\n',
      '2026-02-25.md': '- [x] #session strength 18:30 60min 6/10\n',
    };
    assert.equal(reorder(notes, '2026-03-02', all), undefined);
  });

  it('leaves what is agreed with somebody, and what is done, where it stands', () => {
    const notes = {
      '2026-02-23.md': '- [x] #session flexibility 18:30 75min 8/10\n',
      '2026-02-24.md': '- [ ] #session flexibility 18:30 75min 8/10 with:coach\n',
      '2026-02-25.md': '- [ ] #session strength 18:30 60min 6/10\n',
    };
    assert.equal(reorder(notes, '2026-02-24'), undefined);
    const alone = { ...notes, '2026-02-24.md': '- [ ] #session flexibility 18:30 75min 8/10\n' };
    assert.deepEqual(order(reorder(alone, '2026-02-24')), [
      '23 flexibility',
      '24 strength',
      '25 flexibility',
    ]);
  });

  it('takes the swap that mends most, then the nearest', () => {
    const notes = {
      '2026-02-23.md': '- [x] #session strength 18:30 60min 8/10\n',
      '2026-02-24.md': '- [ ] #session strength 18:30 60min 8/10\n',
      '2026-02-26.md': '- [ ] #session skill 18:30 45min 5/10\n',
      '2026-02-27.md': '- [ ] #session skill 18:30 45min 5/10\n',
    };
    assert.deepEqual(order(reorder(notes, '2026-02-24')), [
      '23 strength',
      '24 skill',
      '26 strength',
      '27 skill',
    ]);
  });
});
