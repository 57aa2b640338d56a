import assert from 'node:assert/strict';
import { summariseWeek } from '../../src/training/week-summary';
import { date, week } from './dates';
import { journalFromNotes } from './journal-from-text';

const journal = journalFromNotes({
  'journal.md': '- #need strength 2/week 60min',
  '2026-02-22.md': '- [x] #session skill 60min',
  '2026-02-23.md': '- [x] #session flexibility 18:30 75min\n- [ ] #session skill 30min',
  '2026-02-24.md': '- [ ] #session strength skipped:ill\n- [ ] #session conditioning 45min moved:2026-02-28',
  '2026-02-26.md': '- [ ] #session strength\n- [ ] #session recovery',
  '2026-02-27.md': '- [ ] #session flexibility 50min moved:2026-03-04',
});

describe('a week in figures', () => {
  it('counts what stands, what is done, skipped and overdue, and the minutes', () => {
    assert.deepEqual(summariseWeek(journal, week('2026-W09'), date('2026-02-25')), {
      week: '2026-W09',
      planned: 5,
      done: 1,
      skipped: 1,
      overdue: 1,
      minutesPlanned: 75 + 30 + 60 + 45,
      minutesDone: 75,
    });
  });

  it('counts a moved session in the week to which it was moved', () => {
    assert.deepEqual(summariseWeek(journal, week('2026-W10'), date('2026-02-25')), {
      week: '2026-W10',
      planned: 1,
      done: 0,
      skipped: 0,
      overdue: 0,
      minutesPlanned: 50,
      minutesDone: 0,
    });
  });

  it('is empty where nothing is written', () => {
    assert.deepEqual(summariseWeek(journal, week('2026-W20'), date('2026-02-25')), {
      week: '2026-W20',
      planned: 0,
      done: 0,
      skipped: 0,
      overdue: 0,
      minutesPlanned: 0,
      minutesDone: 0,
    });
  });
});
