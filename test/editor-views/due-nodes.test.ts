import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import { dateWords } from '../../src/editor/date-words';
import { dueNodes } from '../../src/editor/views/due-nodes';
import { allNodes, block, contextOf, english, nodeOf, rows } from './viewed';

// 2026-02-25 is a Wednesday.
const week = {
  'journal.md': '#athlete "Ilka"\n',
  '2025-12-30.md': '- [ ] #session strength 60min\n',
  '2026-02-12.md': '- [ ] #session strength 60min\n',
  '2026-02-23.md': '- [ ] #session flexibility 18:30 75min 8/10\n',
  '2026-02-24.md': '- [ ] #session skill 18:30 45min with:juno\n- [x] #session recovery 20:00 30min 2/10\n',
  '2026-02-25.md': [
    '- [x] #session flexibility 07:30 60min 7/10 with:coach where:studio -- shoulders warm up in half the time',
    '- [ ] #session hoop 18:00 75min 7/10',
    '- [ ] #session strength 20:00 40min skipped:work',
    '- [ ] #session conditioning 21:00 20min moved:2026-02-27',
  ].join('\n'),
  '2026-02-26.md': '- [ ] #session flexibility 18:30-19:45 8/10\n',
  '2026-03-02.md': '- [ ] #session flexibility 18:30 75min\n',
};

describe('the view of what is due', () => {
  it('groups overdue sessions, the latest first, those of today, and those later this week', () => {
    assert.equal(
      rows(dueNodes([contextOf(week, '2026-02-25')])),
      block(`
        Overdue | 4 sessions
          (history) skill 18:30 | overdue since yesterday, with juno
          (history) flexibility 18:30 | overdue since Monday
          (history) strength | overdue since February 12
          (history) strength | overdue since December 30, 2025
        Today | Wednesday, February 25, 1 to do
          (pass) flexibility 07:30 | done 7/10, with coach
          (circle-large-outline) hoop 18:00 | planned
          (circle-slash) strength 20:00 | skipped (work)
        This week | 2 sessions
          (circle-large-outline) flexibility 18:30 | Thursday, planned
          (circle-large-outline) conditioning 21:00 | Friday, planned
      `),
    );
  });

  it('leaves out groups without sessions, and is empty when nothing is due', () => {
    const notes = { '2026-02-25.md': '- [x] #session hoop 18:00 75min 7/10\n' };
    assert.equal(
      rows(dueNodes([contextOf(notes, '2026-02-25')])),
      block(`
        Today | Wednesday, February 25
          (pass) hoop 18:00 | done 7/10
      `),
    );
    assert.deepEqual(dueNodes([contextOf(notes, '2026-02-26')]), []);
    assert.deepEqual(dueNodes([]), []);
  });

  it('begins with the week to look back on, on Sunday, and on Thursday in the third week of a block', () => {
    const notes = { '2026-02-23.md': '- [x] #session hoop 18:00 75min 7/10\n' };
    assert.equal(rows(dueNodes([contextOf(notes, '2026-03-01')])), '(notebook) Look back on week 2026-W09');
    assert.deepEqual(dueNodes([contextOf(notes, '2026-02-28')]), []);
    assert.deepEqual(dueNodes([{ ...contextOf(notes, '2026-03-01'), reviewDay: 'off' }]), []);
    const begun = { ...notes, 'goals.md': '- #goal split from:2026-02-10 by:2026-06-14\n' };
    const [row, ...more] = dueNodes([contextOf(begun, '2026-02-19')]);
    assert.deepEqual([row, more], [undefined, []], 'no session stands in week 8');
    const third = dueNodes([
      contextOf({ ...begun, 'goals.md': '- #goal split from:2026-02-11\n' }, '2026-02-26'),
    ]);
    assert.equal(rows(third), '(notebook) Look back on week 2026-W09 | week 3 of the block');
    assert.match(third[0]?.tooltip ?? '', /Many slow down in weeks 3, 4, 7 and 8/);
  });

  it('has one row a journal when there are several, also for one in which nothing is due', () => {
    const heron = contextOf(
      { '2026-02-24.md': '- [ ] #session skill 45min\n' },
      '2026-02-25',
      english,
      'Heron',
    );
    const wren = contextOf(
      { '2026-02-24.md': '- [x] #session skill 45min\n' },
      '2026-02-25',
      english,
      'Wren',
    );
    assert.equal(
      rows(dueNodes([heron, wren])),
      block(`
        (person) Heron | 1 overdue
          Overdue | 1 session
            (history) skill | overdue since yesterday
        (person) Wren | nothing due
      `),
    );
  });

  it('tells each state by its own shape and its own words', () => {
    const sessions = allNodes(dueNodes([contextOf(week, '2026-02-25')])).filter((node) => node.session);
    const shapes = new Map(sessions.map((node) => [node.icon, node.kind]));
    assert.deepEqual(Object.fromEntries(shapes), {
      history: 'session.open',
      pass: 'session.done',
      'circle-large-outline': 'session.open',
      'circle-slash': 'session.skipped',
    });
    assert.ok(sessions.every((node) => /overdue|planned|done|skipped/.test(node.description ?? '')));
  });

  it('tells what was missed in the running week, and can be arranged anew, from what is older', () => {
    const overdue = allNodes(dueNodes([contextOf(week, '2026-02-25')])).filter(
      ({ icon }) => icon === 'history',
    );
    assert.deepEqual(
      overdue.map(({ date, kind }) => [date, kind]),
      [
        ['2026-02-24', 'session.missed'],
        ['2026-02-23', 'session.missed'],
        ['2026-02-12', 'session.open'],
        ['2025-12-30', 'session.open'],
      ],
    );
  });

  it('says to a screen reader which session, on which day, in which state', () => {
    const row = nodeOf(dueNodes([contextOf(week, '2026-02-25')]), 'skill 18:30');
    assert.equal(
      row.accessibilityLabel,
      'skill 18:30, Tuesday, February 24, overdue since yesterday, with juno',
    );
  });

  it('has all that the line says in the tooltip', () => {
    const row = nodeOf(dueNodes([contextOf(week, '2026-02-25')]), 'flexibility 07:30');
    assert.equal(
      row.tooltip,
      block(`
        flexibility, Wednesday, February 25, 07:30, 1 h
        done 7/10
        with coach, at: studio
        shoulders warm up in half the time
      `),
    );
  });

  it('leads to the line of the session, and to the date that it was moved to when it is not written yet', () => {
    const nodes = dueNodes([contextOf(week, '2026-02-25')]);
    const textOf = (label: string) => {
      const { place } = nodeOf(nodes, label);
      const text = week[place?.note as keyof typeof week];
      return text?.slice(place?.range.start, place?.range.end);
    };
    assert.equal(textOf('hoop 18:00'), '#session hoop 18:00 75min 7/10');
    assert.equal(textOf('conditioning 21:00'), '2026-02-27');
  });

  it('keeps the ids of its rows, which are unique, when text above them is written or a box is ticked', () => {
    const idsOf = (notes: Readonly<Record<string, string>>) =>
      allNodes(dueNodes([contextOf(notes, '2026-02-25')])).map((node) => node.id);
    const twice = { '2026-02-25.md': '- [ ] #session hoop 18:00\n- [ ] #session hoop 18:00\n' };
    const ids = idsOf(twice);
    assert.equal(new Set(ids).size, 3);
    assert.deepEqual(
      idsOf({
        '2026-02-25.md': '# Wednesday\n\n- [x] #session hoop 18:00 8/10\n- [ ] #session hoop 18:00\n',
      }),
      ids,
    );
  });

  it('writes dates as the language does', () => {
    const german = { ...english, dates: dateWords('de') };
    assert.match(rows(dueNodes([contextOf(week, '2026-02-25', german)])), /Today \| Mittwoch, 25\. Februar/);
  });
});
