import assert from 'node:assert/strict';
import { assert as always, integer, property } from 'fast-check';
import { dayNumber, type IsoDate, isoDate, isoWeekday } from '../../src/notation/time/iso-date';
import { dayTicks, tickLabels } from '../../src/pages/parts/day-ticks';

function ticks(first: string, last: string, most: number, locale = 'en') {
  const found = dayTicks(dayNumber(first as IsoDate), dayNumber(last as IsoDate), most);
  return { dates: found.days.map(isoDate), labels: tickLabels(found, locale) };
}

describe('the days that an axis marks', () => {
  it('are Mondays while they fit', () => {
    assert.deepEqual(ticks('2026-02-20', '2026-03-10', 5), {
      dates: ['2026-02-23', '2026-03-02', '2026-03-09'],
      labels: ['Feb 23', 'Mar 2', 'Mar 9'],
    });
  });

  it('are every other Monday, and then first days of months', () => {
    assert.deepEqual(ticks('2026-02-20', '2026-03-10', 2).dates, ['2026-02-23', '2026-03-09']);
    assert.deepEqual(ticks('2025-11-20', '2026-04-10', 5), {
      dates: ['2025-12-01', '2026-01-01', '2026-02-01', '2026-03-01', '2026-04-01'],
      labels: ['Dec 2025', 'Jan 2026', 'Feb', 'Mar', 'Apr'],
    });
  });

  it('are, over years, months that divide the year evenly', () => {
    assert.deepEqual(ticks('2024-02-10', '2026-02-10', 5).dates, [
      '2024-07-01',
      '2025-01-01',
      '2025-07-01',
      '2026-01-01',
    ]);
  });

  it('are written as the language does', () => {
    assert.deepEqual(ticks('2026-02-20', '2026-03-10', 5, 'de').labels, ['23. Feb.', '2. März', '9. März']);
  });

  it('are in order, within the axis, and never more than asked for', () => {
    always(
      property(
        integer({ min: 0, max: 60_000 }),
        integer({ min: 0, max: 8_000 }),
        integer({ min: 2, max: 20 }),
        (first, length, most) => {
          const { days, every } = dayTicks(first, first + length, most);
          assert.ok(days.length <= most);
          days.forEach((day, index) => {
            assert.ok(day >= first && day <= first + length);
            assert.ok(index === 0 || day > (days[index - 1] ?? 0));
            if (every === 'week') assert.equal(isoWeekday(day), 1);
            else assert.equal(isoDate(day).slice(8), '01');
          });
        },
      ),
      { seed: 20260224, numRuns: 300 },
    );
  });
});
