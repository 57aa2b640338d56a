import assert from 'node:assert/strict';
import fc from 'fast-check';
import { shiftDates, weekOfDate, weeksBetween } from '../../scripts/shift-dates.mjs';

describe('moving the dates of the sample journal by whole weeks', () => {
  it('moves dates and week names wherever they stand alone', () => {
    const moved: readonly (readonly [string, string])[] = [
      ['2026-02-24', '2026-03-03'],
      ['2026-02-24.md', '2026-03-03.md'],
      ['2026-02-24 evening.md', '2026-03-03 evening.md'],
      ['2026-W09.md', '2026-W10.md'],
      ['photo:pictures/2026-02-24-left.jpg', 'photo:pictures/2026-03-03-left.jpg'],
      ['left-2026-02-24.jpg', 'left-2026-03-03.jpg'],
      ['#goal low-split from:2026-02-24 by:2026-12-28', '#goal low-split from:2026-03-03 by:2027-01-04'],
      ['#busy 2026-02-24..2026-02-26', '#busy 2026-03-03..2026-03-05'],
      ['[last Tuesday](2026-02-24.md), (2026-W53)', '[last Tuesday](2026-03-03.md), (2027-W01)'],
      ['at: 2026-02-24T18:30', 'at: 2026-03-03T18:30'],
      ['week 2026-W09-2', 'week 2026-W10-2'],
      ['_2026-02-24_', '_2026-02-24_'],
      ['*2026-02-24*', '*2026-03-03*'],
    ];
    for (const [text, expected] of moved) assert.equal(shiftDates(text, 1), expected);
  });

  it('leaves what only looks like a date', () => {
    for (const text of [
      '2026-02-30', // no such day
      '2025-02-29', // not a leap year
      '2026-13-01',
      '2026-00-10',
      '2025-W53', // a year of 52 weeks
      '2026-W00',
      '2026-W54',
      '12026-02-24',
      '2026-02-245',
      'x2026-02-24',
      '2026-02-24x',
      '2026-02-24-05',
      '10-2026-02-24',
      '2026-W091',
      '2026-2-24',
      '20260224',
      '24.02.2026',
      '9.5cm 7/10 18:30-19:45',
    ]) {
      assert.equal(shiftDates(text, 3), text);
    }
  });

  it('keeps line endings, byte order marks and every other character', () => {
    assert.equal(
      shiftDates('\uFEFF# Dienstag – 2026-02-24\r\n\r\n5 °\r', -8),
      '\uFEFF# Dienstag – 2025-12-30\r\n\r\n5 °\r',
    );
  });

  it('keeps the weekday of every date, and comes back', () => {
    const day = fc.date({
      min: new Date('1900-01-01T00:00:00Z'),
      max: new Date('2200-12-31T00:00:00Z'),
      noInvalidDate: true,
    });
    fc.assert(
      fc.property(day, fc.integer({ min: -5000, max: 5000 }), (date, weeks) => {
        const text = date.toISOString().slice(0, 10);
        const moved = shiftDates(text, weeks);
        assert.equal(new Date(moved).getUTCDay(), new Date(text).getUTCDay());
        assert.equal((Date.parse(moved) - Date.parse(text)) / 604_800_000, weeks);
        assert.equal(shiftDates(moved, -weeks), text);
        assert.equal(shiftDates(weekOfDate(text), weeks), weekOfDate(moved));
        assert.equal(weeksBetween(weekOfDate(text), weekOfDate(moved)), weeks);
      }),
      { seed: 20_260_224, numRuns: 500 },
    );
  });

  // ISO 8601:2004, 3.2.2 and 4.1.4: week 1 is the one with the year's first Thursday. The dates are the examples that
  // the standard is known by, from memory: the last days of 2008 stand in 2009-W01, the first of 2010 in 2009-W53.
  it('knows the weeks at the turn of a year', () => {
    const weeks: readonly (readonly [string, string])[] = [
      ['2005-01-01', '2004-W53'],
      ['2005-01-02', '2004-W53'],
      ['2005-12-31', '2005-W52'],
      ['2006-01-01', '2005-W52'],
      ['2006-01-02', '2006-W01'],
      ['2007-01-01', '2007-W01'],
      ['2008-12-28', '2008-W52'],
      ['2008-12-29', '2009-W01'],
      ['2009-12-31', '2009-W53'],
      ['2010-01-03', '2009-W53'],
      ['2010-01-04', '2010-W01'],
    ];
    for (const [date, week] of weeks) assert.equal(weekOfDate(date), week);
  });

  it('refuses a date or a week that does not exist', () => {
    assert.throws(() => weekOfDate('2026-02-30'), RangeError);
    assert.throws(() => weeksBetween('2026-W09', '2025-W53'), RangeError);
  });
});
