// Source: ISO 8601 week dates. [R] read in two public copies of the standard's examples, [C] recomputed with the
// calendar of the Python standard library; the mark stands beside each row.
import assert from 'node:assert/strict';
import { dayNumber, isoWeekday, parseIsoDate } from '../../src/notation/time/iso-date';
import { addWeeks, isoWeekOfDay, mondayOf, parseIsoWeek } from '../../src/notation/time/iso-week';

const weekDates: readonly (readonly [date: string, weekDate: string, mark: 'R' | 'C'])[] = [
  ['1977-01-01', '1976-W53-6', 'R'],
  ['1977-01-02', '1976-W53-7', 'R'],
  ['1977-12-31', '1977-W52-6', 'R'],
  ['1978-01-01', '1977-W52-7', 'R'],
  ['1978-01-02', '1978-W01-1', 'R'],
  ['1978-12-31', '1978-W52-7', 'R'],
  ['1979-12-31', '1980-W01-1', 'C'],
  ['1981-12-31', '1981-W53-4', 'C'],
  ['1982-01-03', '1981-W53-7', 'C'],
  ['2000-01-01', '1999-W52-6', 'C'],
  ['2004-02-29', '2004-W09-7', 'C'],
  ['2005-01-01', '2004-W53-6', 'C'],
  ['2005-01-02', '2004-W53-7', 'C'],
  ['2005-12-31', '2005-W52-6', 'C'],
  ['2006-01-01', '2005-W52-7', 'C'],
  ['2006-12-31', '2006-W52-7', 'R'],
  ['2007-12-31', '2008-W01-1', 'C'],
  ['2008-12-28', '2008-W52-7', 'C'],
  ['2008-12-29', '2009-W01-1', 'C'],
  ['2008-12-31', '2009-W01-3', 'C'],
  ['2010-01-03', '2009-W53-7', 'C'],
  ['2010-01-04', '2010-W01-1', 'C'],
  ['2012-12-31', '2013-W01-1', 'R'],
  ['2015-12-31', '2015-W53-4', 'C'],
  ['2016-01-02', '2015-W53-6', 'R'],
  ['2018-12-31', '2019-W01-1', 'C'],
  ['2020-12-31', '2020-W53-4', 'C'],
  ['2021-01-03', '2020-W53-7', 'C'],
  ['2022-12-31', '2022-W52-6', 'C'],
  ['2023-01-01', '2022-W52-7', 'C'],
  ['2024-12-29', '2024-W52-7', 'C'],
  ['2025-12-29', '2026-W01-1', 'C'],
  ['2027-01-03', '2026-W53-7', 'C'],
  ['2027-01-04', '2027-W01-1', 'C'],
];

describe('ISO 8601 week dates', () => {
  for (const [date, weekDate, mark] of weekDates)
    it(`${date} is ${weekDate} [${mark}]`, () => {
      const parsed = parseIsoDate(date);
      assert.ok(parsed);
      const day = dayNumber(parsed);
      assert.equal(`${isoWeekOfDay(day)}-${isoWeekday(day)}`, weekDate);
      const week = parseIsoWeek(weekDate.slice(0, 8));
      assert.ok(week);
      assert.equal(mondayOf(week) + isoWeekday(day) - 1, day);
    });

  it('years of 53 weeks: 1992, 1998, 2004, 2009, 2015, 2020, 2026, 2032, 2037, 2043, 2048 [C]', () => {
    const long: number[] = [];
    for (let year = 1990; year <= 2050; year += 1) if (parseIsoWeek(`${year}-W53`)) long.push(year);
    assert.deepEqual(long, [1992, 1998, 2004, 2009, 2015, 2020, 2026, 2032, 2037, 2043, 2048]);
  });

  it('71 of 400 years have 53 weeks [C]', () => {
    let long = 0;
    for (let year = 2000; year < 2400; year += 1) if (parseIsoWeek(`${year}-W53`)) long += 1;
    assert.equal(long, 71);
  });

  it('a week has no number 0 or 54, and the week after 2026-W53 is 2027-W01', () => {
    assert.equal(parseIsoWeek('2026-W00'), undefined);
    assert.equal(parseIsoWeek('2026-W54'), undefined);
    assert.equal(parseIsoWeek('2025-W53'), undefined);
    const last = parseIsoWeek('2026-W53');
    assert.ok(last);
    assert.equal(addWeeks(last, 1), '2027-W01');
  });
});
