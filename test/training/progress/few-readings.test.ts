import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import { figuresOf, type Notes, seriesOf, verdictOf, withReadings } from './figures-of';

const readings = ['14cm', '13cm', '12cm', '11cm', '10cm', '9cm'];
const days = ['2026-01-19', '2026-01-26', '2026-02-02', '2026-02-09', '2026-02-16', '2026-02-23'];
const today = '2026-02-25';

/** The first `count` readings, one a week. */
function notesWith(count: number): Notes {
  return withReadings(Object.fromEntries(days.slice(0, count).map((day, i) => [day, readings[i] ?? ''])));
}

/** What each figure says of a series, in one word or what is missing. */
function states(notes: Notes): Record<string, string> {
  const { sinceFirst, trend, forecast, pace, plateau } = seriesOf(notes, today);
  const word = (figure: { readonly status: string }): string => {
    if (!('reason' in figure)) return figure.status;
    const { reason, missing } = figure as unknown as {
      reason: string;
      missing: readonly { what: string; have: number; need: number }[];
    };
    return [reason, ...missing.map(({ what, have, need }) => `${what} ${have}/${need}`)].join(', ');
  };
  const comparison = pace.status === 'estimated' ? pace.comparison : pace;
  return {
    change: word(sinceFirst),
    trend: word(trend),
    interval:
      trend.status === 'estimated' && 'status' in trend.perWeekInterval ? word(trend.perWeekInterval) : '',
    test: trend.status === 'estimated' ? word(trend.test) : '',
    forecast: word(forecast),
    pace: word(pace),
    comparison: typeof comparison === 'string' ? comparison : word(comparison),
    plateau: word(plateau),
  };
}

describe('with few readings each figure says what is missing', () => {
  it('0', () => {
    const { metrics, worst } = figuresOf(notesWith(0), today);
    assert.deepEqual(metrics, [
      {
        name: 'gap',
        unit: 'cm',
        target: 0,
        by: '2026-06-14',
        lowerIsBetter: true,
        condition: undefined,
        conditions: [],
        series: [],
      },
    ]);
    assert.equal(worst, undefined);
  });

  it('1', () => {
    assert.deepEqual(states(notesWith(1)), {
      change: 'too-few-days, days 1/2',
      trend: 'too-few-points, points 1/2',
      interval: '',
      test: '',
      forecast: 'too-few-points, points 1/2',
      pace: 'estimated',
      comparison: 'too-few-points, points 1/2',
      plateau: 'too-few-days, days 1/5, days-between-first-and-last 0/28, sessions 0/6',
    });
    assert.equal(
      verdictOf(notesWith(1), today),
      'not-estimable: Not enough notes yet for a date: 1 of 5 days measured',
    );
  });

  it('2', () => {
    const found = states(notesWith(2));
    assert.deepEqual(found, {
      change: 'estimated',
      trend: 'estimated',
      interval: 'too-few-points, points 2/5',
      test: 'too-few-points, points 2/5',
      forecast: 'too-few-points, points 2/5',
      pace: 'estimated',
      comparison: 'too-few-points, points 2/5',
      plateau: 'too-few-days, days 2/5, days-between-first-and-last 7/28, sessions 0/6',
    });
  });

  it('3', () => {
    const found = states(notesWith(3));
    assert.equal(found.interval, 'too-few-points, points 3/5');
    assert.equal(found.test, 'too-few-points, points 3/5');
    assert.equal(found.plateau, 'too-few-days, days 3/5, days-between-first-and-last 14/28, sessions 0/6');
    assert.equal(
      verdictOf(notesWith(3), today),
      'not-estimable: Not enough notes yet for a date: 3 of 5 days measured',
    );
  });

  it('5 are enough for a date, and repeats of a day are not', () => {
    assert.equal(states(notesWith(5)).forecast, 'estimated');
    const repeated = withReadings({ '2026-02-02': '14cm + 14.1cm + 13.9cm', '2026-02-09': '13cm + 13.2cm' });
    assert.equal(states(repeated).forecast, 'too-few-points, points 2/5');
  });

  it('a metric without a target is described, and not forecast', () => {
    const notes = withReadings(
      { '2026-02-02': '14cm', '2026-02-09': '13cm' },
      '- #goal low-split by:2026-06-14\n- #metric gap',
    );
    const { trend, forecast, pace } = seriesOf(notes, today);
    assert.equal(trend.status, 'estimated');
    assert.deepEqual(forecast, { status: 'not-estimable', n: 2, reason: 'no-target', missing: [] });
    assert.deepEqual(pace, { status: 'not-estimable', n: 2, reason: 'no-target', missing: [] });
    assert.equal(verdictOf(notes, today), 'no-target: No target is set, so there is nothing to forecast');
    assert.equal(figuresOf(notes, today).worst, undefined);
  });
});
