import assert from 'node:assert/strict';
import { type GoalProgress, goalProgress } from '../../src/training/goal-progress';
import type { MetricProgress } from '../../src/training/metric-progress';
import { date } from './dates';
import { journalFromNotes } from './journal-from-text';

type Notes = Readonly<Record<string, string>>;

function progress(notes: Notes, id = 'low-split', today = '2026-02-25'): GoalProgress {
  const found = goalProgress(journalFromNotes(notes), id, { today: date(today) });
  assert.ok(found);
  return found;
}

/** The only metric of a goal with this `#metric` line and these readings, one a day from 2026-02-01 on. */
function metric(line: string, ...readings: readonly string[]): MetricProgress {
  const days = readings.map((reading, index) => {
    const day = String(index + 1).padStart(2, '0');
    return [
      `2026-02-${day}.md`,
      reading
        .split('; ')
        .map((one) => `- #measure low-split gap ${one}`)
        .join('\n'),
    ];
  });
  const [only] = progress({
    'goals.md': `- #goal low-split\n- #metric ${line}`,
    ...Object.fromEntries(days),
  }).metrics;
  assert.ok(only);
  return only;
}

describe('the progress of a goal', () => {
  it('says what the goal is and how many days are left', () => {
    const found = progress({
      'goals.md':
        '- #goal low-split from:2026-01-12 by:2026-06-14 "Front split"\n- #why the act in my own words',
    });
    assert.deepEqual(
      [found.id, found.title, found.from, found.by, found.closed, found.daysLeft, found.hasWhy],
      ['low-split', 'Front split', '2026-01-12', '2026-06-14', false, 109, true],
    );
  });

  it('counts the days since a date that has passed as negative, and none without a date', () => {
    assert.equal(progress({ 'goals.md': '- #goal low-split by:2026-02-23' }).daysLeft, -2);
    assert.equal(progress({ 'goals.md': '- #goal low-split' }).daysLeft, undefined);
  });

  it('never holds the private reason', () => {
    const found = progress({ 'goals.md': '- #goal low-split\n- #why the words of a secret' });
    assert.equal(JSON.stringify(found).includes('secret'), false);
  });

  it('is undefined for a goal that the journal does not have', () => {
    assert.equal(goalProgress(journalFromNotes({}), 'low-split', { today: date('2026-02-25') }), undefined);
  });
});

describe('the progress of a metric', () => {
  it('converts readings to the unit of the target, or else of the first value, or of the first reading', () => {
    const values = (one: MetricProgress) => [
      one.unit,
      one.series[0]?.readings.map((reading) => reading.value),
    ];
    assert.deepEqual(values(metric('gap from:14cm to:0mm', '9.5cm', '3in')), ['mm', [95, 76.2]]);
    assert.deepEqual(values(metric('gap from:14cm', '95mm')), ['cm', [9.5]]);
    assert.deepEqual(values(metric('gap', '95mm', '9cm')), ['mm', [95, 90]]);
    assert.deepEqual(values(metric('gap to:80%', '3/5')), ['%', [60]]);
  });

  it('leaves out readings of another dimension and counts them', () => {
    const found = metric('gap from:14cm to:0cm', '9cm', '9deg', '8cm');
    assert.equal(found.mismatched, 1);
    assert.deepEqual(
      found.series[0]?.readings.map((reading) => reading.value),
      [9, 8],
    );
  });

  it('averages the repeats of a day', () => {
    const [series] = metric('gap from:14cm to:0cm', '9cm; 10cm; 11cm', '9cm').series;
    assert.deepEqual(
      series?.days.map((day) => [day.date, day.value, day.count]),
      [
        ['2026-02-01', 10, 3],
        ['2026-02-02', 9, 1],
      ],
    );
    assert.equal(series.readings.length, 4);
  });

  it('knows the first, the latest and the best, lower or higher', () => {
    const ends = (one: MetricProgress) => {
      const [series] = one.series;
      return [one.lowerIsBetter, series?.first?.value, series?.latest?.value, series?.best?.value];
    };
    assert.deepEqual(ends(metric('gap from:14cm to:0cm', '12cm', '8cm', '9cm')), [true, 12, 9, 8]);
    assert.deepEqual(ends(metric('gap from:5s to:20s', '7s', '12s', '11s')), [false, 7, 11, 12]);
    assert.deepEqual(ends(metric('gap to:20s', '7s', '12s')), [false, 7, 12, 12]);
    assert.deepEqual(ends(metric('gap', '7s', '12s')), [undefined, 7, 12, undefined]);
    assert.deepEqual(ends(metric('gap from:4cm to:-2cm', '1cm', '-1cm')), [true, 1, -1, -1]);
  });

  describe('the share of the way', () => {
    for (const [line, readings, share] of [
      ['gap from:14cm to:0cm', ['7cm'], 0.5],
      ['gap from:14cm to:0cm', ['12cm', '3.5cm'], 0.75],
      ['gap from:5s to:20s', ['8s'], 0.2],
      ['gap from:4cm to:-4cm', ['-2cm'], 0.75],
      ['gap from:14cm to:0cm', ['16cm'], 0],
      ['gap from:14cm to:0cm', ['-1cm'], 1],
      ['gap to:0cm', ['10cm', '8cm'], 0.2],
      ['gap to:0cm', ['10cm'], undefined],
      ['gap from:14cm to:0cm', [], undefined],
      ['gap from:14cm', ['10cm', '8cm'], undefined],
      ['gap from:14cm to:14cm', ['10cm', '8cm'], undefined],
    ] as const) {
      it(`of "${line}" after ${readings.join(', ') || 'no reading'} is ${share ?? 'unknown'}`, () => {
        assert.equal(metric(line, ...readings).shareDone, share);
      });
    }
  });

  it('keeps the sides apart, and has come as far as the side that has come less far', () => {
    const found = metric('gap from:14cm to:0cm sides', '7cm side:left; 10.5cm side:right', '12.25cm');
    assert.deepEqual(
      found.series.map((series) => [series.side, series.latest?.value, series.shareDone]),
      [
        ['left', 7, 0.5],
        ['right', 10.5, 0.25],
        [undefined, 12.25, 0.125],
      ],
    );
    assert.equal(found.shareDone, 0.125);
  });

  it('has no series without readings, and nothing that one could be taken for', () => {
    const none = metric('gap from:14cm to:0cm noise:1cm');
    assert.deepEqual([none.series, none.shareDone, none.noise, none.lowerIsBetter], [[], undefined, 1, true]);
    const [one] = metric('gap', '7s').series;
    assert.deepEqual([one?.first, one?.shareDone], [one?.latest, undefined]);
  });

  it('keeps condition, photo and place of a reading', () => {
    const [series] = metric('gap from:14cm to:0cm', '9cm warm photo:photos/split.jpg').series;
    const [reading] = series?.readings ?? [];
    assert.deepEqual(
      [reading?.condition, reading?.photo, reading?.note, reading?.range.start],
      ['warm', 'photos/split.jpg', '2026-02-01.md', 2],
    );
  });
});

describe('readings that belong to no metric', () => {
  it('are counted', () => {
    const found = progress({
      'goals.md': '- #goal low-split\n- #metric gap to:0cm\n- #metric angle to:180deg',
      '2026-02-01.md':
        '- #measure low-split gap 9cm\n- #measure low-split 9cm\n- #measure low-split gapp 9cm',
    });
    assert.equal(found.unplacedReadings, 2);
  });
});

describe('the steps of a goal', () => {
  const state = (line: string, ...readings: readonly string[]) => {
    const [step] = progress({
      'goals.md': `- #goal low-split\n- #metric gap from:14cm to:0cm\n${line}`,
      '2026-02-01.md': readings.map((reading) => `- #measure low-split gap ${reading}`).join('\n'),
      '2026-02-08.md': '- #measure low-split gap 6cm',
    }).steps;
    return [step?.state, step?.reachedOn];
  };

  it('are done by their tick', () => {
    assert.deepEqual(state('- [x] #step half'), ['done', undefined]);
    assert.deepEqual(state('- [x] #step half to:7cm'), ['done', '2026-02-08']);
  });

  it('are reached by the first day whose mean comes there', () => {
    assert.deepEqual(state('- [ ] #step half to:7cm'), ['reached', '2026-02-08']);
    assert.deepEqual(state('- [ ] #step half metric:gap to:60mm'), ['reached', '2026-02-08']);
    assert.deepEqual(state('- [ ] #step half to:7cm', '6cm', '9cm'), ['reached', '2026-02-08']);
    assert.deepEqual(state('- [ ] #step half to:7cm', '6cm', '8cm'), ['reached', '2026-02-01']);
    assert.deepEqual(state('- [ ] #step most to:5cm'), ['open', undefined]);
  });

  it('are overdue once their date has passed', () => {
    assert.deepEqual(state('- [ ] #step most to:5cm by:2026-02-24'), ['overdue', undefined]);
    assert.deepEqual(state('- [ ] #step most to:5cm by:2026-02-25'), ['open', undefined]);
    assert.deepEqual(state('- [ ] #step half to:7cm by:2026-02-01'), ['reached', '2026-02-08']);
    assert.deepEqual(state('- [ ] #step coach-says-so by:2026-02-24'), ['overdue', undefined]);
  });

  it('of a metric with sides are reached when both sides are there', () => {
    const bothSides = (right: string) =>
      progress({
        'goals.md': '- #goal low-split\n- #metric gap from:14cm to:0cm sides\n- [ ] #step half to:7cm',
        '2026-02-01.md': '- #measure low-split gap 6cm side:left',
        '2026-02-08.md': right,
      }).steps[0];
    assert.equal(bothSides('')?.state, 'open');
    assert.equal(bothSides('- #measure low-split gap 8cm side:right')?.state, 'open');
    assert.equal(bothSides('- #measure low-split gap 7cm side:right')?.reachedOn, '2026-02-08');
  });

  it('with a unit that does not fit are never reached', () => {
    assert.deepEqual(state('- [ ] #step half to:7deg'), ['open', undefined]);
  });
});

describe('readings taken warm and cold', () => {
  const mixed = metric('gap from:16cm to:4cm', '12cm warm', '11cm warm', '9cm cold', '10.5cm warm');

  it('are not mixed: what counts is the state of the most days', () => {
    const [series] = mixed.series;
    assert.equal(series?.readings.length, 4);
    assert.deepEqual(
      series?.days.map(({ value }) => value),
      [12, 11, 10.5],
    );
    assert.equal(series?.latest?.value, 10.5);
    assert.equal(series?.best?.value, 10.5);
    assert.equal(mixed.shareDone, (16 - 10.5) / 12);
  });

  it('do not reach a step in the other state', () => {
    const [step] = progress({
      'goals.md': '- #goal low-split\n- #metric gap from:16cm to:4cm\n- [ ] #step half to:9cm',
      '2026-02-01.md': '- #measure low-split gap 12cm cold',
      '2026-02-08.md': '- #measure low-split gap 8cm warm',
      '2026-02-15.md': '- #measure low-split gap 11cm cold',
    }).steps;
    assert.deepEqual([step?.state, step?.reachedOn], ['open', undefined]);
  });

  it('leave out a side that was only measured in the other state', () => {
    const { series } = metric(
      'gap from:16cm to:4cm sides',
      '12cm side:left cold; 13cm side:right warm',
      '11cm side:left cold',
    );
    assert.deepEqual(
      series.map(({ side, latest }) => [side, latest?.value]),
      [
        ['left', 11],
        ['right', undefined],
      ],
    );
  });
});

describe('the sessions of a goal', () => {
  const found = progress({
    'goals.md': '- #goal low-split by:2026-06-14\n- #need flexibility 2/week 60min 6/10',
    '2026-02-10.md': '- [x] #session flexibility 18:30',
    '2026-02-17.md': '- [x] #session strength 45min for:low-split\n- [x] #session skill',
    '2026-02-18.md': '- [x] #session flexibility 18:30-19:45',
    '2026-02-20.md': '- [ ] #session flexibility skipped:ill',
    '2026-02-27.md': '- [ ] #session flexibility 18:30 75min',
    '2026-03-03.md': '- [ ] #session flexibility',
  });

  it('are counted week by week, with the minutes that were done', () => {
    assert.deepEqual(
      found.weeks.map(({ load, ...week }) => week),
      [
        { week: '2026-W07', done: 1, minutesDone: 60, standing: 1 },
        { week: '2026-W08', done: 2, minutesDone: 120, standing: 2 },
        { week: '2026-W09', done: 0, minutesDone: 0, standing: 1 },
        { week: '2026-W10', done: 0, minutesDone: 0, standing: 1 },
      ],
    );
  });

  it('have the load of those that were rated by the athlete, and count the others as unknown', () => {
    const rated = progress({
      'goals.md': '- #goal low-split\n- #need flexibility 2/week 60min 6/10',
      '2026-02-10.md': '- [x] #session flexibility 18:30 5/10',
      // The need's rating is a plan: it says nothing about how hard this one was.
      '2026-02-12.md': '- [x] #session flexibility 18:30',
    });
    assert.deepEqual(rated.weeks[0]?.load, { n: 2, unknown: 1, total: undefined, knownTotal: 300 });
  });

  it('are listed when they are done', () => {
    assert.deepEqual(
      found.sessionsDone.map(({ date, kind, effort, minutes }) => [date, kind, effort, minutes]),
      [
        ['2026-02-10', 'flexibility', 6, 60],
        ['2026-02-17', 'strength', 7, 45],
        ['2026-02-18', 'flexibility', 6, 75],
      ],
    );
  });

  it('tell the next one', () => {
    const next = found.nextSession;
    assert.deepEqual(
      [next?.date, next?.span, next?.kind, next?.note],
      ['2026-02-27', { start: 18 * 60 + 30 }, 'flexibility', '2026-02-27.md'],
    );
    assert.equal(progress({ 'goals.md': '- #goal low-split' }).nextSession, undefined);
  });
});
