import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import { parseIsoWeek } from '../../src/notation/time/iso-week';
import { formatTime } from '../../src/notation/time/wall-clock';
import { type NextWeek, planNextWeek } from '../../src/planning/next-week';
import { fillMessage } from '../../src/training/finding';
import { applied, changed, date, journalOf, type Notes } from './journal-of';

/** Tuesday of week 9, 2026; the week that is written is 2 to 8 March. */
const today = date('2026-02-24');
const options = { today, zone: 'Europe/Berlin' };

function plan(notes: Notes): NextWeek {
  return planNextWeek(journalOf(notes), options);
}

/** `Thu 18:30 flexibility` */
function inWords(week: NextWeek): readonly string[] {
  return week.placed.map(({ date: day, start, kind }) =>
    [day, ...(start === undefined ? [] : [formatTime(start)]), kind].join(' '),
  );
}

describe('writing next week’s notes', () => {
  it('lays the sessions of a goal’s needs on the weekdays and times that were kept, with the lines of their routine', () => {
    const notes: Notes = {
      'goals.md': [
        '- #goal low-split by:2026-06-14 "Front split"',
        '- #need flexibility 2/week 75min 7/10 routine:split-evening',
        '- #routine split-evening flexibility 75min regions:hips',
        '  - warm-up: ten minutes',
        '  - half splits',
        '    - both sides',
        '',
      ].join('\n'),
      '2026-02-23.md': '- [x] #session flexibility 18:30 75min 7/10 for:low-split\n',
      '2026-02-19.md': '- [x] #session flexibility 19:00 75min 7/10 for:low-split\n',
      '2026-02-26.md': '- [ ] #session flexibility 17:00 75min 7/10 for:low-split skipped:work\n',
      '2026-03-01.md': '- [ ] #session recovery 11:00 45min 2/10\n',
    };
    const week = plan(notes);
    assert.equal(week.week, '2026-W10');
    assert.deepEqual(inWords(week), [
      '2026-03-02 18:30 flexibility',
      '2026-03-05 19:00 flexibility',
      '2026-03-08 11:00 recovery',
    ]);
    assert.deepEqual(week.leftOut, []);
    assert.deepEqual(
      fillMessage(week.placed[0]?.reason ?? { template: '', values: [] }),
      'Monday 18:30: as kept in 1 of the last 4 weeks',
    );
    const session = (time: string) =>
      `- [ ] #session flexibility ${time} 75min 7/10 for:low-split routine:split-evening\n` +
      '  - warm-up: ten minutes\n  - half splits\n    - both sides\n';
    assert.deepEqual(changed(notes, week.changes), {
      '2026-03-02.md': `# Monday, 2026-03-02\n\n${session('18:30')}`,
      '2026-03-03.md': '# Tuesday, 2026-03-03\n\nRest day.\n',
      '2026-03-04.md': '# Wednesday, 2026-03-04\n\nRest day.\n',
      '2026-03-05.md': `# Thursday, 2026-03-05\n\n${session('19:00')}`,
      '2026-03-06.md': '# Friday, 2026-03-06\n\nRest day.\n',
      '2026-03-07.md': '# Saturday, 2026-03-07\n\nRest day.\n',
      '2026-03-08.md': '# Sunday, 2026-03-08\n\n- [ ] #session recovery 11:00 45min 2/10\n',
    });
  });

  it('adds nothing the second time', () => {
    const notes: Notes = {
      'goals.md': '- #goal hoop by:2026-06-14\n- #need skill 2/week 60min\n- #need strength 1/week 45min\n',
      '2026-02-23.md': '- [x] #session skill 18:30 60min\n',
    };
    const after = applied(notes, plan(notes).changes);
    assert.deepEqual(plan(after).changes, []);
    assert.deepEqual(plan(after).placed, []);
  });

  it('keeps what is planned already, and the words of the notes', () => {
    const notes: Notes = {
      'goals.md': '- #goal hoop by:2026-06-14\n- #need skill 2/week 60min\n- #rule recovery min:0/week\n',
      '2026-02-24.md': '- [x] #session skill 18:30 60min\n',
      '2026-03-03.md':
        '# Tuesday\r\n\r\nDinner with wren at nine.\r\n\r\n- [ ] #session skill 17:00 60min with:wren\r\n  - doubles\r\n',
      '2026-03-05.md': 'Rain.',
    };
    const week = plan(notes);
    assert.equal(week.placed.length, 1);
    const after = applied(notes, week.changes);
    assert.equal(after['2026-03-03.md'], notes['2026-03-03.md']);
    assert.ok(after['2026-03-05.md']?.startsWith('Rain.'));
  });

  it('uses free hours when the weeks before say nothing, and takes what is busy out of them', () => {
    const notes: Notes = {
      'journal.md': [
        '- #free mon wed 18:00-20:00',
        '- #free sat 10:00-12:00',
        '- #busy 2026-03-02 18:30-22:00',
        '- #busy 2026-03-04',
        '- #need skill 1/week 75min',
        '- #rule recovery min:0/week',
      ].join('\n'),
    };
    const week = plan(notes);
    assert.deepEqual(inWords(week), ['2026-03-07 10:00 skill']);
    assert.equal(
      fillMessage(week.placed[0]?.reason ?? { template: '', values: [] }),
      'Saturday 10:00: free from 10:00 to 12:00',
    );
  });

  it('gives a session its place and company, in hours that suit them', () => {
    const notes: Notes = {
      'journal.md': [
        '- #free mon 18:00-20:00',
        '- #free thu 18:00-20:00 where:studio with:coach',
        '- #free fri 18:00-20:00 where:home',
        '- #need skill 1/week 60min 6/10 where:studio with:coach',
        '- #rule recovery min:0/week',
        '- #busy 2026-03-02',
      ].join('\n'),
    };
    const week = plan(notes);
    assert.equal(
      applied(notes, week.changes)['2026-03-05.md'],
      '# Thursday, 2026-03-05\n\n- [ ] #session skill 18:00 60min 6/10 with:coach where:studio\n',
    );
  });

  it('keeps gaps across the border of the week', () => {
    const notes: Notes = {
      'journal.md':
        '- #free mon tue 18:00-20:00\n- #need flexibility 1/week 60min 8/10\n- #rule recovery min:0/week\n',
      '2026-03-01.md': '- [ ] #session flexibility 18:00 60min 8/10\n',
    };
    // Sunday ends at 19:00; 48 h later it is Tuesday, 19:00.
    assert.deepEqual(inWords(plan(notes)), ['2026-03-03 19:00 flexibility']);
  });

  it('counts hours through a change of the clock', () => {
    // In Berlin the clock goes forward in the night to 29 March 2026: from Saturday 18:00 to Monday 19:00 it is 48 h.
    const notes: Notes = {
      'journal.md':
        '- #free mon 18:00-20:30\n- #need flexibility 1/week 60min 8/10\n- #rule recovery min:0/week\n',
      '2026-03-28.md': '- [ ] #session flexibility 17:00 60min 8/10\n',
    };
    const week = planNextWeek(journalOf(notes), { ...options, today: date('2026-03-25') });
    assert.deepEqual(inWords(week), ['2026-03-30 19:00 flexibility']);
    const elsewhere = planNextWeek(journalOf(notes), { today: date('2026-03-25'), zone: 'UTC' });
    assert.deepEqual(inWords(elsewhere), ['2026-03-30 18:00 flexibility']);
  });

  it('finds the one arrangement that fits, where the first places would not', () => {
    // Three hard flexibility sessions, 48 h from end to start: only Monday, Wednesday late and Saturday hold them.
    const notes: Notes = {
      'journal.md': [
        '- #free mon 18:00-19:00',
        '- #free tue 18:00-19:00',
        '- #free wed 19:00-20:00',
        '- #free fri 18:00-19:00',
        '- #free sat 10:00-11:00',
        '- #need flexibility 3/week 60min 8/10',
        '- #rule recovery min:0/week',
      ].join('\n'),
    };
    assert.deepEqual(inWords(plan(notes)), [
      '2026-03-02 18:00 flexibility',
      '2026-03-04 19:00 flexibility',
      '2026-03-07 10:00 flexibility',
    ]);
  });

  it('says what was left out and which rules stand in the way', () => {
    const notes: Notes = {
      'journal.md':
        '- #free mon tue 18:00-20:00\n- #need flexibility 2/week 60min 8/10\n- #rule recovery min:0/week\n',
    };
    const week = plan(notes);
    assert.deepEqual(inWords(week), ['2026-03-02 18:00 flexibility']);
    assert.deepEqual(
      week.leftOut.map(({ kind, why }) => [kind, fillMessage(why)]),
      [['flexibility', 'No place is left for flexibility: 48 h between flexibility sessions']],
    );
  });

  it('leaves out the farther goal first', () => {
    const notes: Notes = {
      'goals.md': [
        '- #goal far by:2026-12-01',
        '- #need skill 1/week 60min',
        '- #goal near by:2026-04-01',
        '- #need skill 1/week 60min',
      ].join('\n'),
      'journal.md': '- #free mon 18:00-19:00\n- #rule recovery min:0/week\n',
    };
    const week = plan(notes);
    assert.deepEqual(
      week.placed.map(({ goal }) => goal),
      ['near'],
    );
    assert.deepEqual(
      week.leftOut.map(({ goal }) => goal),
      ['far'],
    );
  });

  it('says when no open hours are long enough', () => {
    const week = plan({
      'journal.md': '- #free mon 18:00-18:30\n- #need skill 1/week 60min\n- #rule recovery min:0/week\n',
    });
    assert.deepEqual(
      week.leftOut.map(({ why }) => fillMessage(why)),
      ['No open hours of the week hold skill for 60 min'],
    );
    assert.deepEqual(week.changes, []);
  });

  it('puts nothing hard on a region that hurts', () => {
    const notes: Notes = {
      'journal.md': [
        '- #need flexibility 1/week 60min 8/10 routine:back',
        '- #need strength 1/week 60min 8/10 routine:legs',
        '- #routine back flexibility regions:lower-back',
        '- #routine legs strength regions:legs',
        '- #rule recovery min:0/week',
      ].join('\n'),
      '2026-02-23.md': '- #pain lower-back 5/10\n- [x] #session strength 18:00 60min 8/10\n',
    };
    const week = plan(notes);
    assert.deepEqual(
      week.placed.map(({ kind }) => kind),
      ['strength'],
    );
    assert.deepEqual(
      week.leftOut.map(({ why }) => fillMessage(why)),
      ['No place is left for flexibility: pain in lower-back that is not cleared'],
    );
  });

  it('keeps a day of rest, and a day’s cap, and a maximum', () => {
    const days = 'mon tue wed thu fri sat sun';
    const rest = plan({
      'journal.md': `- #free ${days} 18:00-20:00\n- #need conditioning 7/week 45min 5/10\n- #rule recovery min:0/week\n- #rule any max:9/week cap:45min\n`,
    });
    assert.equal(rest.placed.length, 6);
    assert.equal(rest.leftOut.length, 1);
    assert.equal(
      fillMessage(rest.leftOut[0]?.why ?? { template: '', values: [] }),
      'No place is left for conditioning: no more than 45 min of training sessions a day and a rest day a week',
    );
    const most = plan({
      'journal.md': `- #free ${days} 18:00-20:00\n- #need skill 4/week 30min 5/10\n- #rule skill max:2/week\n- #rule recovery min:0/week\n`,
    });
    assert.equal(most.placed.length, 2);
    assert.deepEqual(
      most.leftOut.map(({ why }) => fillMessage(why)),
      Array(2).fill('No place is left for skill: no more than 2 skill sessions a week'),
    );
  });

  it('adds the recovery that the rules ask for, with its own routine, and only where there is training', () => {
    const recovery = '- #free sun 10:00-12:00\n- #routine easy recovery 30min\n  - feet up\n';
    const notes: Notes = { 'journal.md': recovery, '2026-03-03.md': '- [x] #session skill 18:00 60min\n' };
    assert.equal(
      applied(notes, plan(notes).changes)['2026-03-08.md'],
      '# Sunday, 2026-03-08\n\n- [ ] #session recovery 10:00 30min 2/10 routine:easy\n  - feet up\n',
    );
    assert.deepEqual(plan({ 'journal.md': recovery }).changes, []);
  });

  it('plans without times in a journal that has none', () => {
    const notes: Notes = {
      'goals.md': '- #goal hoop\n- #need skill 2/week\n- #rule recovery min:0/week\n',
      '2026-02-23.md': '- [x] #session skill\n',
      '2026-02-25.md': '- [x] #session skill\n',
    };
    const week = planNextWeek(journalOf(notes), { ...options, today: date('2026-02-26') });
    const after = changed(notes, week.changes);
    assert.equal(after['2026-03-02.md'], '# Monday, 2026-03-02\n\n- [ ] #session skill for:hoop\n');
    assert.equal(after['2026-03-04.md'], '# Wednesday, 2026-03-04\n\n- [ ] #session skill for:hoop\n');
  });

  it('adds sessions until the minutes of a need are there', () => {
    const notes: Notes = {
      'journal.md': '- #need conditioning 150min/week 60min 5/10\n- #rule recovery min:0/week\n',
      '2026-03-03.md': '- [ ] #session conditioning 18:00 60min 5/10\n',
    };
    assert.equal(plan(notes).placed.length, 2);
  });

  it('says how long a session lasts where minutes are counted, even when nothing says it', () => {
    const notes: Notes = {
      'journal.md': '- #need conditioning 150min/week 5/10\n- #rule recovery min:0/week\n',
    };
    const week = plan(notes);
    assert.deepEqual(
      week.placed.map(({ minutes }) => minutes),
      [60, 60, 60],
    );
    assert.match(applied(notes, week.changes)['2026-03-02.md'] ?? '', /#session conditioning 60min 5\/10/);
  });

  it('asks nothing for goals that are closed, over, or not begun', () => {
    const notes: Notes = {
      'goals.md': [
        '- [x] #goal done',
        '- #need skill 1/week',
        '- #goal over by:2026-03-01',
        '- #need skill 1/week',
        '- #goal later from:2026-03-09',
        '- #need skill 1/week',
      ].join('\n'),
    };
    assert.deepEqual(plan(notes), { week: '2026-W10', placed: [], leftOut: [], changes: [] });
  });

  it('writes a session that was moved into the week and is written nowhere yet', () => {
    const notes: Notes = {
      'journal.md': '- #rule recovery min:0/week\n',
      '2026-02-24.md': '- [ ] #session skill 18:30 60min moved:2026-03-03\n  - mounts\n',
    };
    assert.equal(
      changed(notes, plan(notes).changes)['2026-03-03.md'],
      '# Tuesday, 2026-03-03\n\n- [ ] #session skill 18:30 60min\n  - mounts\n',
    );
  });

  it('writes into the days that are left when the week is this one', () => {
    const notes: Notes = { 'journal.md': '- #need skill 2/week 60min 5/10\n- #rule recovery min:0/week\n' };
    const week = planNextWeek(journalOf(notes), {
      ...options,
      week: parseIsoWeek('2026-W09') ?? assert.fail(),
    });
    assert.equal(week.placed.length, 2);
    assert.deepEqual(
      week.changes.map(({ note }) => note),
      ['2026-02-24.md', '2026-02-25.md', '2026-02-26.md', '2026-02-27.md', '2026-02-28.md', '2026-03-01.md'],
    );
  });
});
