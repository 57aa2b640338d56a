import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import { metricOf, type Notes, withReadings } from './figures-of';

function inShort(notes: Notes): readonly string[] {
  return metricOf(notes, '2026-03-01').series.map(({ side, condition, isMain, days, readings }) =>
    [
      side ?? '-',
      condition ?? '-',
      isMain ? 'main' : 'beside',
      `${days.length}d`,
      `${readings.length}r`,
    ].join(' '),
  );
}

describe('series of readings', () => {
  it('never mix warm and cold ones; those that say neither are a series of their own', () => {
    const notes = withReadings({
      '2026-02-02': '14cm warm + 18cm cold',
      '2026-02-09': '13cm warm',
      '2026-02-16': '12.5cm',
    });
    assert.deepEqual(inShort(notes), ['- warm main 2d 2r', '- - beside 1d 1r', '- cold beside 1d 1r']);
    const [warm, plain, cold] = metricOf(notes, '2026-03-01').series;
    assert.deepEqual(
      [warm, plain, cold].map((series) => series?.days.map(({ value }) => value)),
      [[14, 13], [12.5], [18]],
    );
  });

  it('are judged by the state measured on most days, not by the one with most readings', () => {
    const notes = withReadings({
      '2026-02-02': '14cm warm + 14.2cm warm + 14.1cm warm',
      '2026-02-09': '17cm cold',
      '2026-02-16': '16cm cold',
    });
    assert.deepEqual(inShort(notes), ['- cold main 2d 2r', '- warm beside 1d 3r']);
    assert.deepEqual(metricOf(notes, '2026-03-01').conditions, [
      { condition: 'cold', days: 2 },
      { condition: 'warm', days: 1 },
    ]);
  });

  it('of as many days each: by the one measured last', () => {
    assert.equal(
      metricOf(withReadings({ '2026-02-02': '14cm warm', '2026-02-09': '17cm cold' }), '2026-03-01')
        .condition,
      'cold',
    );
    assert.equal(
      metricOf(withReadings({ '2026-02-02': '14cm warm + 17cm cold' }), '2026-03-01').condition,
      'warm',
    );
  });

  it('take one state for both sides, so that they can be compared', () => {
    const notes = withReadings({
      '2026-02-02': '14cm side:left warm + 12cm side:right cold',
      '2026-02-09': '13cm side:left warm + 12cm side:right cold',
      '2026-02-16': '12cm side:right warm',
    });
    assert.deepEqual(inShort(notes), [
      'left warm main 2d 2r',
      'right warm main 1d 1r',
      'right cold beside 2d 2r',
    ]);
  });

  it('leave out what is dated after today', () => {
    const notes = withReadings({ '2026-02-02': '14cm', '2026-03-02': '1cm' });
    assert.deepEqual(inShort(notes), ['- - main 1d 1r']);
  });

  it('convert units, and count what cannot be converted nowhere', () => {
    const notes = withReadings({ '2026-02-02': '140mm', '2026-02-09': '13cm', '2026-02-16': '5kg' });
    assert.deepEqual(
      metricOf(notes, '2026-03-01').series.map(({ days }) => days.map(({ value }) => value)),
      [[14, 13]],
    );
  });
});
