import assert from 'node:assert/strict';
import fc from 'fast-check';
import { describe, it } from 'mocha';
import { dayNumber, type IsoDate, isoDate } from '../../src/notation/time/iso-date';
import {
  addMonths,
  daysOfMonth,
  type IsoMonth,
  isoMonthOf,
  parseIsoMonth,
} from '../../src/notation/time/iso-month';

describe('a month', () => {
  it('is four digits, a hyphen, and 01 to 12', () => {
    assert.equal(parseIsoMonth('2026-02'), '2026-02');
    for (const text of ['2026-13', '2026-00', '2026-2', '26-02', '2026-02-01', '0000-05', '']) {
      assert.equal(parseIsoMonth(text), undefined, text);
    }
  });

  // The Gregorian rule: every fourth year, but of the centuries only every fourth one (ISO 8601-1:2019, 4.2.1) [M].
  it('has 28 to 31 days, in leap years 29 in February', () => {
    const length = (month: string): number => {
      const { first, last } = daysOfMonth(month as IsoMonth);
      return last - first + 1;
    };
    assert.deepEqual(
      Array.from({ length: 12 }, (_, index) => length(`2026-${String(index + 1).padStart(2, '0')}`)),
      [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31],
    );
    assert.deepEqual(['2028-02', '2000-02', '1900-02', '2100-02'].map(length), [29, 29, 28, 28]);
  });

  it('counts months across years', () => {
    assert.equal(addMonths('2026-02' as IsoMonth, 11), '2027-01');
    assert.equal(addMonths('2026-02' as IsoMonth, -2), '2025-12');
    assert.throws(() => addMonths('9999-12' as IsoMonth, 1), RangeError);
  });

  it('holds exactly the days between its first and its last', () => {
    const days = fc.integer({
      min: dayNumber('0004-01-01' as IsoDate),
      max: dayNumber('9996-12-31' as IsoDate),
    });
    fc.assert(
      fc.property(days, fc.integer({ min: -24, max: 24 }), (day, months) => {
        const month = isoMonthOf(isoDate(day));
        const { first, last } = daysOfMonth(month);
        assert.ok(first <= day && day <= last);
        assert.notEqual(isoMonthOf(isoDate(first - 1)), month);
        assert.equal(isoMonthOf(isoDate(last)), month);
        assert.equal(daysOfMonth(addMonths(month, 1)).first, last + 1);
        assert.equal(addMonths(addMonths(month, months), -months), month);
      }),
      { seed: 5, numRuns: 300 },
    );
  });
});
