import assert from 'node:assert/strict';
import { calendarSpans } from '../../src/editor/commands/calendar-spans';
import { date } from '../training/dates';

describe('the spans that a calendar is exported for', () => {
  const inShort = (today: string) =>
    calendarSpans(date(today)).map(({ name, first, last }) => `${name} ${first}..${last}`);

  it('are whole weeks, the same on every day of a week', () => {
    const expected = [
      'this-week 2026-02-23..2026-03-01',
      'next-week 2026-03-02..2026-03-08',
      'four-weeks 2026-02-23..2026-03-22',
      'twelve-weeks 2026-02-23..2026-05-17',
    ];
    assert.deepEqual(inShort('2026-02-23'), expected);
    assert.deepEqual(inShort('2026-02-25'), expected);
    assert.deepEqual(inShort('2026-03-01'), expected);
  });
});
