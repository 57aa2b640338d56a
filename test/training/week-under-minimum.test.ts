import assert from 'node:assert/strict';
import { told } from './journal-from-text';

const below = (notes: Record<string, string>, today = '2026-02-25') =>
  told('week-under-minimum', notes, today).map((line) => line.split(' | ').slice(1).join(' | '));

const need = { 'journal.md': '- #need strength 2/week 60min 6/10' };

describe('week-under-minimum', () => {
  it('stands on the number that asks', () => {
    assert.deepEqual(told('week-under-minimum', { ...need, '2026-02-23.md': '' }, '2026-02-25'), [
      'journal.md | information | 2/week | Week 2026-W09 holds 0 of the 2 strength sessions asked for; there is still room on 5 days',
    ]);
  });

  describe('is information while the open days left can hold what is missing, then a warning', () => {
    const done = { ...need, '2026-02-23.md': '- [x] #session strength' };
    const nothing = { ...need, '2026-02-23.md': 'a note' };

    it('counts today as a day that is left', () => {
      assert.deepEqual(below(done, '2026-03-01'), [
        'information | 2/week | Week 2026-W09 holds 1 of the 2 strength sessions asked for; there is still room on 1 day',
      ]);
    });

    it('asks a day for each missing session', () => {
      assert.deepEqual(below(nothing, '2026-02-28'), [
        'information | 2/week | Week 2026-W09 holds 0 of the 2 strength sessions asked for; there is still room on 2 days',
      ]);
      assert.deepEqual(below(nothing, '2026-03-01'), [
        'warning | 2/week | Week 2026-W09 holds 0 of the 2 strength sessions asked for; the days that are left (1) cannot hold the rest',
      ]);
    });

    it('does not count a day that holds such a session already', () => {
      const today = { ...need, '2026-03-01.md': '- [x] #session strength' };
      assert.deepEqual(below(today, '2026-03-01'), [
        'warning | 2/week | Week 2026-W09 holds 1 of the 2 strength sessions asked for; no day is left for it',
      ]);
    });

    it('does not count a day that is wholly busy, or without free hours where the journal names some', () => {
      const busy = { ...done, 'trip.md': '- #busy 2026-02-26..2026-03-01' };
      assert.equal(below(busy, '2026-02-26')[0]?.split(' | ')[0], 'warning');
      const someHours = { ...done, 'trip.md': '- #busy 2026-02-26..2026-03-01 08:00-12:00' };
      assert.equal(below(someHours, '2026-02-26')[0]?.split(' | ')[0], 'information');
      const free = (day: string) => ({ ...done, 'hours.md': `- #free ${day} 18:00-21:00` });
      assert.equal(below(free('thu'), '2026-02-26')[0]?.split(' | ')[0], 'information');
      assert.equal(below(free('tue'), '2026-02-26')[0]?.split(' | ')[0], 'warning');
    });

    it('warns about a week that is over', () => {
      assert.deepEqual(
        below({ ...done, '2026-03-03.md': '- [x] #session strength\n- [x] #session strength' }, '2026-03-03'),
        ['warning | 2/week | Week 2026-W09 holds 1 of the 2 strength sessions asked for; the week is over'],
      );
    });
  });

  describe('counts', () => {
    it('done, planned and overdue sessions, not skipped or moved ones', () => {
      const week = (second: string) => ({
        ...need,
        '2026-02-23.md': '- [ ] #session strength',
        '2026-02-27.md': second,
      });
      assert.deepEqual(below(week('- [ ] #session strength')), []);
      assert.equal(below(week('- [ ] #session strength skipped:tired')).length, 1);
      assert.deepEqual(below(week('- [ ] #session strength moved:2026-03-03')), [
        'information | 2/week | Week 2026-W09 holds 1 of the 2 strength sessions asked for; there is still room on 5 days',
        'information | 2/week | Week 2026-W10 holds 1 of the 2 strength sessions asked for; there is still room on 6 days',
      ]);
      assert.deepEqual(below(week('- [ ] #session strength moved:2026-02-28')), []);
    });

    it('minutes where the need is in minutes', () => {
      const minutes = {
        'journal.md': '- #need flexibility 200min/week',
        '2026-02-23.md': '- [x] #session flexibility 90min',
      };
      assert.deepEqual(below(minutes), [
        'information | 200min/week | Week 2026-W09 holds 1 h 30 min of the 3 h 20 min of flexibility asked for; there is still room on 5 days',
      ]);
      assert.deepEqual(below({ ...minutes, '2026-02-25.md': '- [ ] #session flexibility 110min' }), []);
    });

    it('minutes in sessions of the need’s length, to see whether they still fit', () => {
      const minutes = {
        'journal.md': '- #need flexibility 200min/week 60min',
        '2026-02-23.md': '- [x] #session flexibility 60min',
      };
      assert.equal(below(minutes, '2026-02-27')[0]?.split(' | ')[0], 'information');
      assert.equal(below(minutes, '2026-02-28')[0]?.split(' | ')[0], 'warning');
    });

    it('minutes of sessions that are enough in number but too short, from one whole length on', () => {
      const week = (length: string) => ({
        ...need,
        '2026-02-23.md': `- [x] #session strength ${length}`,
        '2026-02-25.md': `- [x] #session strength ${length}`,
      });
      assert.deepEqual(below(week('45min')), []);
      assert.deepEqual(below(week('30min')), [
        'information | 2/week | Week 2026-W09 holds 1 h of the 2 h of strength asked for; there is still room on 4 days',
      ]);
    });
  });

  it('tells what a #rule asks at least', () => {
    assert.deepEqual(
      below({ 'journal.md': '- #rule conditioning min:1/week', '2026-02-23.md': '- [x] #session strength' }),
      [
        'information | 1/week | Week 2026-W09 holds no conditioning session, and 1 is asked for; there is still room on 5 days',
      ],
    );
  });

  it('looks only at needs of goals that are open in the week', () => {
    const goal = (fields: string) => ({
      'goals.md': `${fields}\n- #need strength 1/week`,
      '2026-02-23.md': 'a note',
    });
    assert.equal(below(goal('- #goal planche by:2026-02-23')).length, 1);
    assert.equal(below(goal('- #goal planche by:2026-02-22')).length, 0);
    assert.equal(below(goal('- #goal planche from:2026-03-01')).length, 1);
    assert.equal(below(goal('- #goal planche from:2026-03-02')).length, 0);
    assert.equal(below(goal('- [ ] #goal planche by:2026-06-14')).length, 1);
    assert.equal(below(goal('- [x] #goal planche by:2026-06-14')).length, 0);
  });

  describe('looks at a week', () => {
    it('in the past when it has a note of a day', () => {
      const weeks = { ...need, '2026-02-09.md': 'a note', '2026-02-23.md': 'a note' };
      assert.deepEqual(
        below(weeks).map((line) => /Week (\S+)/.exec(line)?.[1]),
        ['2026-W07', '2026-W09'],
      );
    });

    it('that runs, once the journal has begun', () => {
      assert.equal(below({ ...need, '2026-02-16.md': 'a note' }, '2026-02-25').length, 2);
      assert.deepEqual(below(need), []);
      assert.deepEqual(below({ ...need, '2026-03-02.md': 'a note' }), []);
    });

    it('to come when a session stands in it', () => {
      const next = (text: string) => ({
        ...need,
        '2026-02-24.md': '- [x] #session strength\n- [x] #session strength',
        '2026-03-04.md': text,
      });
      assert.deepEqual(below(next('- [ ] #session strength')), [
        'information | 2/week | Week 2026-W10 holds 1 of the 2 strength sessions asked for; there is still room on 6 days',
      ]);
      assert.deepEqual(below(next('a note')), []);
      assert.deepEqual(below(next('- [ ] #session strength skipped:travel')), []);
    });
  });
});
