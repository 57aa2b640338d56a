import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import { indexOf } from './index-of';

const lowSplit = `# Goals

- #goal low-split by:2026-06-14 from:2026-01-05 "Front split on the floor"
- #why the last pose of the act
- #metric gap from:14cm to:0cm noise:1cm sides
- [x] #step one-block by:2026-03-01 metric:gap to:10cm
- #need flexibility 2/week 75min 7/10 gap:48h max:3/week where:studio with:coach,juno routine:front-split
`;

describe('the plan of a journal', () => {
  it('gathers a goal and what stands in its scope', () => {
    const { goals } = indexOf({ 'goals.md': lowSplit }).plan;
    const goal = goals.get('low-split');
    assert(goal);
    assert.equal(goal.title, 'Front split on the floor');
    assert.equal(goal.by, '2026-06-14');
    assert.equal(goal.from, '2026-01-05');
    assert.equal(goal.closed, false);
    assert.equal(goal.note, 'goals.md');
    assert.deepEqual(
      goal.whys.map((why) => why.words?.value),
      ['the last pose of the act'],
    );
    assert.deepEqual(
      goal.metrics.map(({ note: _note, entry: _entry, ...metric }) => metric),
      [
        {
          goal: 'low-split',
          name: 'gap',
          from: { value: 14, unit: 'cm' },
          to: { value: 0, unit: 'cm' },
          noise: { value: 1, unit: 'cm' },
          sides: true,
        },
      ],
    );
    assert.deepEqual(
      goal.steps.map(({ note: _note, entry: _entry, ...step }) => step),
      [
        {
          goal: 'low-split',
          id: 'one-block',
          by: '2026-03-01',
          metric: 'gap',
          to: { value: 10, unit: 'cm' },
          ticked: true,
        },
      ],
    );
    assert.deepEqual(
      goal.needs.map(({ note: _note, entry: _entry, ...need }) => need),
      [
        {
          goal: 'low-split',
          kind: 'flexibility',
          perWeek: { count: 2 },
          length: { minutes: 75, unit: 'min' },
          rating: 7,
          gap: { minutes: 2880, unit: 'h' },
          max: { count: 3 },
          where: 'studio',
          with: ['coach', 'juno'],
          routine: 'front-split',
        },
      ],
    );
  });

  it('leaves out what was not written', () => {
    const { goals } = indexOf({ 'goals.md': '#goal bridge\n#metric angle\n#need skill 1/week\n' }).plan;
    const goal = goals.get('bridge');
    assert(goal);
    assert.equal(goal.title, 'bridge');
    assert.deepEqual(Object.keys(goal.metrics[0] ?? {}), ['goal', 'name', 'sides', 'note', 'entry']);
    assert.deepEqual(Object.keys(goal.needs[0] ?? {}), ['goal', 'kind', 'perWeek', 'with', 'note', 'entry']);
    assert(!('by' in goal) && !('from' in goal));
  });

  it('closes a goal whose box is ticked', () => {
    const { goals } = indexOf({ 'goals.md': '- [x] #goal bridge\n- [ ] #goal split\n' }).plan;
    assert.equal(goals.get('bridge')?.closed, true);
    assert.equal(goals.get('split')?.closed, false);
  });

  it('ends a goal at the next heading of its depth: a need below asks every week', () => {
    const { plan } = indexOf({
      'goals.md':
        '# Split\n- #goal split\n- #need flexibility 2/week\n# Every week\n- #need recovery 1/week\n- #metric lost\n',
    });
    assert.deepEqual(
      plan.needs.map(({ goal, kind }) => [goal, kind]),
      [
        ['split', 'flexibility'],
        [undefined, 'recovery'],
      ],
    );
    assert.equal(plan.goals.get('split')?.metrics.length, 0);
  });

  it('lets the first of two goals with one name count, in order of path', () => {
    const { plan } = indexOf({
      'summer.md': '#goal split "From a block"\n#metric block from:20cm to:0cm\n#need skill 1/week\n',
      'goals.md': '#goal split "On the floor"\n#need flexibility 2/week\n#goal split "Again"\n',
    });
    assert.equal(plan.goals.get('split')?.title, 'On the floor');
    assert.deepEqual(plan.goals.get('split')?.metrics, []);
    assert.deepEqual(
      plan.duplicateGoals.map(({ title, note, metrics, needs }) => [
        title,
        note,
        metrics.length,
        needs.length,
      ]),
      [
        ['Again', 'goals.md', 0, 0],
        ['From a block', 'summer.md', 1, 1],
      ],
    );
    assert.deepEqual(
      plan.needs.map(({ kind }) => kind),
      ['flexibility'],
    );
  });

  it('lets a note count before the copy that a sync program left', () => {
    const { plan } = indexOf({
      'plan (conflicted copy).md':
        '- #need recovery 1/week\n- #event 2026-04-18 "Studio evening"\n#goal split "Old"\n',
      'plan.md': '- #need recovery 1/week\n- #event 2026-04-18 "Studio evening"\n#goal split "New"\n',
    });
    assert.equal(plan.goals.get('split')?.title, 'New');
    assert.equal(plan.needs.length, 1);
    assert.equal(plan.events.length, 1);
    assert.equal(plan.duplicateGoals.length, 1);
  });

  it('counts a line twice that one note writes twice', () => {
    const { plan } = indexOf({ 'plan.md': '- #need recovery 1/week\n- #need recovery 1/week\n' });
    assert.equal(plan.needs.length, 2);
  });

  it('keeps goals without a name apart, and nothing in them counts', () => {
    const { plan } = indexOf({ 'goals.md': '#goal "No name"\n#need flexibility 2/week\n#metric gap\n' });
    assert.equal(plan.goals.size, 0);
    assert.equal(plan.namelessGoals[0]?.entry.title?.value, 'No name');
    assert.deepEqual(plan.needs, []);
  });

  it('takes no half lines: a need without its number, a rule without its subject', () => {
    const { plan } = indexOf({
      'plan.md':
        '#need flexibility\n#need 2/week\n#rule gap:48h\n#routine\n#kind\n#free monday\n#free 18:00-20:00\n#busy\n#event "Show"\n',
    });
    assert.deepEqual(
      [plan.needs, plan.rules, plan.free, plan.busy, plan.events].map((list) => list.length),
      [0, 0, 0, 0, 0],
    );
    assert.equal(plan.routines.size + plan.kinds.size, 0);
  });

  it('gathers routines, rules, kinds, hours, busy days and events of every note', () => {
    const { plan } = indexOf({
      'a.md':
        '- #routine legs flexibility 75min regions:hamstrings,hips\n- #kind hoop like:strength\n- #kind breathing\n',
      'b.md':
        '- #rule any max:8/week cap:2h30\n- #rule recovery min:1/week\n- #free monday tue 18:00-20:30 where:studio with:juno\n',
      'week/2026-W09.md': '- #busy 2026-02-24 18:00-19:30\n- #busy 2026-03-06..2026-03-07\n',
      '2026-02-24.md': '- #event 2026-04-18 "Studio evening" for:split,handstand\n- #routine legs skill\n',
    });
    const legs = plan.routines.get('legs');
    // A day note comes first in order of path.
    assert.equal(legs?.kind, 'skill');
    assert.equal(legs?.note, '2026-02-24.md');
    assert.deepEqual(
      [...plan.kinds],
      [
        ['hoop', 'strength'],
        ['breathing', undefined],
      ],
    );
    assert.deepEqual(
      plan.rules.map(({ subject, max, min, cap }) => [subject, max, min, cap?.minutes]),
      [
        ['any', { count: 8 }, undefined, 150],
        ['recovery', undefined, { count: 1 }, undefined],
      ],
    );
    assert.deepEqual(plan.free[0]?.weekdays, [1, 2]);
    assert.deepEqual(plan.free[0]?.span, { start: 1080, end: 1230 });
    assert.deepEqual([plan.free[0]?.where, plan.free[0]?.with], ['studio', ['juno']]);
    assert.deepEqual(
      plan.busy.map(({ days, span }) => [days, span]),
      [
        [
          { first: '2026-02-24', last: '2026-02-24' },
          { start: 1080, end: 1170 },
        ],
        [{ first: '2026-03-06', last: '2026-03-07' }, undefined],
      ],
    );
    assert.deepEqual(
      plan.events.map(({ date, name, goals }) => [date, name, goals]),
      [['2026-04-18', 'Studio evening', ['split', 'handstand']]],
    );
  });

  it('knows whose journal it is from the journal note before any other', () => {
    const notes = {
      'heron/a.md': '#athlete "Someone"\n#zone Asia/Tokyo\n',
      'heron/journal.md': '#athlete "Heron"\n#zone Europe/Lisbon\n',
    };
    const { plan } = indexOf(notes, 'heron');
    assert.deepEqual(plan.athlete, { name: 'Heron', minor: false });
    assert.equal(plan.zone, 'Europe/Lisbon');
    assert.equal(indexOf({ 'heron/a.md': notes['heron/a.md'] }, 'heron').plan.zone, 'Asia/Tokyo');
  });

  it('takes an athlete for a minor wherever the word stands', () => {
    const { plan } = indexOf({ 'a.md': '#athlete minor\n', 'journal.md': '#athlete "Wren"\n' });
    assert.deepEqual(plan.athlete, { name: 'Wren', minor: true });
  });

  it('says nothing of a zone that does not exist, and nothing of an athlete that is not named', () => {
    const { plan } = indexOf({ 'journal.md': '#zone Europe/Nowhere\n' });
    assert(!('zone' in plan));
    assert(!('athlete' in plan));
  });
});
