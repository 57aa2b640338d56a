import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import { printed } from '../../published/printed';
import { figuresOf, metricOf, type Notes, seriesOf, withReadings } from './figures-of';

const goal = '- #goal low-split by:2026-06-14\n- #metric gap from:14cm to:0cm noise:1cm';

describe('the change of a reading', () => {
  const change = (
    readings: Readonly<Record<string, string>>,
    which: 'sinceFirst' | 'sinceLast' = 'sinceLast',
  ) => {
    const found = seriesOf(withReadings(readings, goal), '2026-03-01')[which];
    assert(found.status === 'estimated');
    return found;
  };

  it('is within measuring noise below the minimal detectable change: 2.7718 times the error of single readings', () => {
    const small = change({ '2026-02-02': '14cm', '2026-02-09': '11.3cm' });
    printed(small.noise, '2.7718');
    assert.deepEqual([small.direction, small.withinNoise], ['nearer', true]);
    assert.equal(change({ '2026-02-02': '14cm', '2026-02-09': '11.2cm' }).withinNoise, false);
  });

  it('of means of several readings is told sooner: 1.959964 x error x sqrt(1/3 + 1/3)', () => {
    const means = change({
      '2026-02-02': '14cm + 13.9cm + 14.1cm',
      '2026-02-09': '12.2cm + 12.3cm + 12.1cm',
    });
    printed(means.noise, '1.6003');
    assert.equal(means.withinNoise, false);
    assert.equal(means.n, 6);
  });

  it('runs since the first day, and since the one before the latest', () => {
    const readings = { '2026-02-02': '14cm', '2026-02-09': '10cm', '2026-02-16': '12cm' };
    const [first, last] = [change(readings, 'sinceFirst'), change(readings, 'sinceLast')];
    assert.deepEqual([first.from.date, first.change, first.direction], ['2026-02-02', -2, 'nearer']);
    assert.deepEqual([last.from.date, last.change, last.direction], ['2026-02-09', 2, 'further']);
  });

  it('has no good or bad direction without a target', () => {
    const notes = withReadings(
      { '2026-02-02': '14cm', '2026-02-09': '13cm' },
      '- #goal low-split\n- #metric gap noise:1cm',
    );
    const { sinceLast } = seriesOf(notes, '2026-03-01');
    assert(sinceLast.status === 'estimated');
    assert.equal(sinceLast.direction, 'unknown');
  });
});

describe('a plateau', () => {
  const days = ['2026-01-19', '2026-01-26', '2026-02-02', '2026-02-09', '2026-02-16', '2026-02-23'];
  const today = '2026-02-25';

  function notes(readings: readonly string[], sessions: number): Notes {
    const all = withReadings(
      Object.fromEntries(readings.map((value, i) => [days[i] ?? '', value])),
      `${goal}\n- #need flexibility 1/week`,
    );
    for (const day of days.slice(0, sessions)) all[`${day}.md`] += '- [x] #session flexibility 18:00 60min\n';
    return all;
  }
  const still = ['12cm', '12.4cm', '11.9cm', '12.2cm', '12cm', '12.1cm'];
  const plateau = (values: readonly string[], sessions = 6) =>
    seriesOf(notes(values, sessions), today).plateau;

  it('is no change beyond noise in six weeks although there was a session a week', () => {
    const found = plateau(still);
    assert(found.status === 'estimated');
    assert.equal(found.isPlateau, true);
    assert.deepEqual(
      [found.n, found.weeks, found.sessionsDone, found.first, found.last],
      [6, 6, 6, '2026-01-19', '2026-02-23'],
    );
  });

  it('is none while the slope says that something moves, however small beside the noise', () => {
    const found = plateau(['12.5cm', '12.4cm', '12.3cm', '12.2cm', '12.1cm', '12cm']);
    assert(found.status === 'estimated');
    assert.equal(found.isPlateau, false);
    assert.ok(Math.abs(found.change) < found.detectableChange);
  });

  it('is not called one when there was no training', () => {
    const found = plateau(still, 5);
    assert(found.status === 'not-estimable');
    assert.deepEqual(
      [found.reason, found.missing],
      ['too-few-sessions', [{ what: 'sessions', have: 5, need: 6 }]],
    );
  });

  it('is not looked for where days are few, close together, or the target is reached', () => {
    const reasonOf = (values: readonly string[]) => {
      const found = plateau(values);
      return found.status === 'not-estimable' ? found.reason : found.status;
    };
    assert.equal(reasonOf(still.slice(0, 4)), 'too-few-days');
    assert.equal(reasonOf(['-1cm', ...still.slice(1)]), 'target-reached');
    const close = withReadings(
      Object.fromEntries([16, 17, 18, 19, 20, 21].map((day, i) => [`2026-02-${day}`, still[i] ?? ''])),
      goal,
    );
    const found = seriesOf(close, today).plateau;
    assert(found.status === 'not-estimable');
    assert.equal(found.reason, 'days-too-close');
  });

  it('counts sessions of this goal only', () => {
    const other = { ...notes(still, 6), 'more.md': '- #goal handstand\n- #need skill 1/week' };
    for (const day of days) {
      other[`${day}.md` as keyof typeof other] =
        `- #measure low-split gap 12cm\n- [x] #session skill 45min\n`;
    }
    const found = seriesOf(other, today).plateau;
    assert(found.status === 'not-estimable');
    assert.equal(found.reason, 'too-few-sessions');
  });
});

describe('the sides', () => {
  const sided = (unit: string, error = '1') =>
    `- #goal low-split by:2026-06-14\n- #metric gap from:20${unit} to:5${unit} noise:${error}${unit} sides`;
  const sides = (readings: Readonly<Record<string, string>>, goalLines = sided('cm')) => {
    const found = metricOf(withReadings(readings, goalLines), '2026-03-01').sides;
    assert.ok(found);
    return found;
  };

  it('differ when the difference is beyond its own noise; the side ahead is the one nearer to the target', () => {
    const found = sides({ '2026-02-02': '14cm side:left + 10cm side:right' });
    assert(found.status === 'estimated');
    assert.deepEqual(
      [found.difference, found.larger, found.beyondNoise, found.ahead],
      [-4, 'left', true, 'right'],
    );
    printed(found.noise, '2.7718');
    assert.equal(found.percentOfLarger, undefined, 'the zero of a gap is no true zero');
  });

  it('are not told apart within noise', () => {
    const found = sides({ '2026-02-02': '12cm side:left + 10cm side:right' });
    assert(found.status === 'estimated');
    assert.deepEqual([found.beyondNoise, found.ahead], [false, undefined]);
  });

  it('are compared by the latest day of each, in one state', () => {
    const found = sides({
      '2026-02-02': '14cm side:left warm + 10cm side:right warm',
      '2026-02-09': '13cm side:left warm + 19cm side:right cold',
    });
    assert(found.status === 'estimated');
    assert.deepEqual(
      [found.left, found.right, found.dates.left, found.dates.right],
      [13, 10, '2026-02-09', '2026-02-02'],
    );
  });

  it('are not compared with one side missing, or two weeks and more apart', () => {
    const reason = (readings: Readonly<Record<string, string>>) => {
      const found = sides(readings);
      return found.status === 'not-estimable' ? found.reason : found.status;
    };
    assert.equal(reason({ '2026-02-02': '14cm side:left' }), 'a-side-is-missing');
    assert.equal(
      reason({ '2026-02-02': '14cm side:left', '2026-02-17': '10cm side:right' }),
      'days-too-far-apart',
    );
    assert.equal(reason({ '2026-02-02': '14cm side:left', '2026-02-16': '10cm side:right' }), 'estimated');
  });

  it('differ in percent of the larger only where zero is none: 20 s and 10 s', () => {
    const found = sides({ '2026-02-02': '20s side:left + 10s side:right' }, sided('s'));
    assert(found.status === 'estimated');
    assert.equal(found.percentOfLarger, 50);
  });
});

describe('the steps', () => {
  const steps = (lines: string, readings: Readonly<Record<string, string>> = {}) =>
    figuresOf(withReadings(readings, `${goal}\n${lines}`), '2026-02-25').steps.map(
      ({ id, state, daysEarly, daysOverdue, canBeTicked }) => ({
        id,
        state,
        daysEarly,
        daysOverdue,
        canBeTicked,
      }),
    );

  it('are overdue after their date, by so many days', () => {
    assert.deepEqual(steps('- [ ] #step half by:2026-02-20'), [
      { id: 'half', state: 'overdue', daysEarly: undefined, daysOverdue: 5, canBeTicked: false },
    ]);
  });

  it('are reached by a reading, early or late, and can then be ticked', () => {
    const lines =
      '- [ ] #step ten by:2026-02-20 metric:gap to:10cm\n- [ ] #step nine by:2026-02-12 metric:gap to:9cm';
    assert.deepEqual(steps(lines, { '2026-02-10': '9.5cm', '2026-02-15': '9cm' }), [
      { id: 'ten', state: 'reached', daysEarly: 10, daysOverdue: undefined, canBeTicked: true },
      { id: 'nine', state: 'reached', daysEarly: -3, daysOverdue: undefined, canBeTicked: true },
    ]);
  });

  it('that are ticked are done, whatever the readings say', () => {
    const line = '- [x] #step nine by:2026-02-12 metric:gap to:9cm';
    assert.deepEqual(steps(line, { '2026-02-20': '9cm' }), [
      { id: 'nine', state: 'done', daysEarly: undefined, daysOverdue: undefined, canBeTicked: false },
    ]);
  });
});
