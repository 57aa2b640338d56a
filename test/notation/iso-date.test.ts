import assert from 'node:assert/strict';
import fc from 'fast-check';
import {
  addDays,
  dayNumber,
  daysBetween,
  type IsoDate,
  isoDate,
  isoWeekday,
  looksLikeIsoDate,
  parseIsoDate,
} from '../../src/notation/time/iso-date';

const date = (text: string): IsoDate => {
  const parsed = parseIsoDate(text);
  assert.ok(parsed, text);
  return parsed;
};

describe('a date of the notation', () => {
  for (const text of ['2026-02-24', '2024-02-29', '0001-01-01', '9999-12-31'])
    it(`reads ${text}`, () => assert.equal(parseIsoDate(text), text));

  for (const text of ['2026-02-30', '2025-02-29', '2026-13-01', '2026-00-10', '2026-04-31'])
    it(`knows that ${text} has the shape of a date and does not exist`, () => {
      assert.equal(parseIsoDate(text), undefined);
      assert.ok(looksLikeIsoDate(text));
    });

  for (const text of [
    '2026-2-3',
    '26-02-03',
    '2026/02/03',
    '20260203',
    '2026-02-03T10:00',
    ' 2026-02-03',
    '',
  ])
    it(`does not take ${JSON.stringify(text)} for a date`, () => {
      assert.equal(parseIsoDate(text), undefined);
      assert.ok(!looksLikeIsoDate(text));
    });

  it('counts days on the calendar, whatever the clock does', () => {
    assert.equal(daysBetween(date('2026-03-28'), date('2026-03-30')), 2);
    assert.equal(daysBetween(date('2011-12-29'), date('2011-12-31')), 2);
    assert.equal(addDays(date('2024-02-28'), 2), '2024-03-01');
    assert.equal(isoWeekday(dayNumber(date('2026-02-24'))), 2);
    assert.equal(dayNumber(date('1970-01-01')), 0);
  });

  it('goes forth and back over every day of 2024 to 2027', () => {
    const first = dayNumber(date('2024-01-01'));
    const last = dayNumber(date('2027-12-31'));
    for (let day = first; day <= last; day += 1) assert.equal(dayNumber(isoDate(day)), day);
    fc.assert(
      fc.property(
        fc.integer({ min: first, max: last }),
        fc.integer({ min: -2000, max: 2000 }),
        (day, step) => {
          assert.equal(daysBetween(isoDate(day), addDays(isoDate(day), step)), step);
        },
      ),
      { seed: 20260224 },
    );
  });
});
