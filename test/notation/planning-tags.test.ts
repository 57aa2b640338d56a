import assert from 'node:assert/strict';
import { readNote } from '../../src/notation/read-note';
import { cut, only, problemsOf } from './reading';

describe('#goal', () => {
  it('reads id, dates and title', () => {
    const text = '#goal low-split from:2026-01-05 by:2026-06-14 "Flat on the floor"';
    const goal = only('goal', text);
    assert.equal(goal.id?.value, 'low-split');
    assert.equal(goal.from?.value, '2026-01-05');
    assert.equal(goal.by?.value, '2026-06-14');
    assert.equal(goal.title?.value, 'Flat on the floor');
    assert.equal(cut(text, goal.title?.range), 'Flat on the floor');
  });

  const goalsOf = (text: string) =>
    readNote(text).entries.flatMap((entry) =>
      'goal' in entry && entry.tag !== 'measure' ? [entry.goal] : [],
    );

  it('owns the tags below it up to the next heading of the same depth', () => {
    const text =
      '## Split\n#goal split\n#why one\n### Steps\n- [ ] #step half\n## Else\n#need recovery 1/week\n';
    assert.deepEqual(goalsOf(text), ['split', 'split']);
  });

  it('owns the tags below it up to the next goal', () => {
    const text = '#goal split\n#metric gap from:12cm to:0cm\n#goal stand\n#metric hold from:5s to:60s';
    assert.deepEqual(goalsOf(text), ['split', 'stand']);
  });

  it('ends at a heading less deep than its own', () =>
    assert.deepEqual(goalsOf('# A\n### B\n#goal split\n#why one\n## C\n#why two'), ['split']));

  it('owns nothing above it', () => assert.deepEqual(goalsOf('#why before\n#goal split'), []));
});

describe('the other tags that plan', () => {
  it('#why keeps all its words', () =>
    assert.equal(only('why', '- #why to fly -- again').words?.value, 'to fly -- again'));

  it('#metric', () => {
    const metric = only('metric', '#metric gap from:12cm to:-2cm noise:0.5cm sides');
    assert.equal(metric.name?.value, 'gap');
    assert.equal(metric.from?.value.value, 12);
    assert.equal(metric.to?.value.value, -2);
    assert.equal(metric.noise?.value.value, 0.5);
    assert.equal(metric.sides?.value, true);
  });

  it('#step', () => {
    const step = only('step', '- [x] #step half-way by:2026-04-01 metric:gap to:6cm');
    assert.deepEqual(
      [step.id?.value, step.by?.value, step.metric?.value, step.to?.value.value, step.task?.checked],
      ['half-way', '2026-04-01', 'gap', 6, true],
    );
  });

  it('#need', () => {
    const need = only(
      'need',
      '- #need flexibility 2/week 75min 7/10 gap:48h max:3/week where:studio with:coach,partner routine:hips',
    );
    assert.equal(need.kind?.value, 'flexibility');
    assert.deepEqual(need.perWeek?.value, { count: 2 });
    assert.equal(need.length?.value.minutes, 75);
    assert.equal(need.rating?.value, 7);
    assert.deepEqual(need.gap?.value, { minutes: 2880, unit: 'h' });
    assert.deepEqual(need.max?.value, { count: 3 });
    assert.deepEqual(
      need.with.map((one) => one.value),
      ['coach', 'partner'],
    );
  });

  it('#need in minutes a week', () =>
    assert.deepEqual(only('need', '#need flexibility 150min/week').perWeek?.value, { minutes: 150 }));

  it('#routine', () => {
    const text = '- #routine hips flexibility 20min regions:hips,hamstrings\n  - pancake 3 x 60s\n';
    const routine = only('routine', text);
    assert.equal(routine.id?.value, 'hips');
    assert.equal(routine.kind?.value, 'flexibility');
    assert.deepEqual(
      routine.regions.map((one) => one.value),
      ['hips', 'hamstrings'],
    );
    assert.equal(cut(text, routine.body?.range), '  - pancake 3 x 60s');
  });

  it('#rule', () => {
    const rule = only('rule', '#rule flexibility gap:48h min:2/week max:4/week cap:2h');
    assert.deepEqual(
      [
        rule.subject?.value,
        rule.gap?.value.minutes,
        rule.min?.value.count,
        rule.max?.value.count,
        rule.cap?.value.minutes,
      ],
      ['flexibility', 2880, 2, 4, 120],
    );
  });

  it('#kind', () => assert.equal(only('kind', '#kind duo like:skill').like?.value, 'skill'));

  it('#free', () => {
    const free = only('free', '- #free mon Wednesday 18:00-21:00 where:studio');
    assert.deepEqual(
      free.weekdays.map((one) => one.value),
      [1, 3],
    );
    assert.deepEqual(free.span?.value, { start: 1080, end: 1260 });
    assert.equal(free.where?.value, 'studio');
  });

  it('#busy for a span of hours and for several days', () => {
    assert.deepEqual(only('busy', '#busy 2026-03-07 09:00-17:00').span?.value, { start: 540, end: 1020 });
    assert.deepEqual(only('busy', '#busy 2026-03-07..2026-03-10').days?.value, {
      first: '2026-03-07',
      last: '2026-03-10',
    });
  });

  it('#event', () => {
    const event = only('event', '#event 2026-05-30 "summer show" for:hoop');
    assert.deepEqual(
      [event.date?.value, event.name?.value, event.for[0]?.value],
      ['2026-05-30', 'summer show', 'hoop'],
    );
  });

  it('#athlete', () => {
    const athlete = only('athlete', '#athlete "Wren" minor consent:2026-01-05 born:2012-05-03 -- her mother');
    assert.deepEqual(
      [athlete.name?.value, athlete.minor?.value, athlete.consent?.value, athlete.born?.value],
      ['Wren', true, '2026-01-05', '2012-05-03'],
    );
  });

  it('#zone takes a name of the time zone data', () => {
    assert.equal(only('zone', '#zone Europe/Lisbon').zone?.value, 'Europe/Lisbon');
    assert.deepEqual(problemsOf('#zone Lisbon'), ['not-a-zone: Lisbon']);
  });
});
