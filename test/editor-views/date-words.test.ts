import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import { dateWords } from '../../src/editor/date-words';
import { date } from './viewed';

describe('dates in words', () => {
  const words = dateWords('en-GB');
  const today = date('2026-02-25');

  it('are a weekday within six days and a date beyond, before and after', () => {
    assert.equal(words.near(date('2026-02-19'), today), 'Thursday');
    assert.equal(words.near(date('2026-02-18'), today), '18 February');
    assert.equal(words.near(date('2026-03-03'), today), 'Tuesday');
    assert.equal(words.near(date('2026-03-04'), today), '4 March');
  });

  it('name the year when it is another one', () => {
    assert.equal(words.day(date('2025-12-31'), today), '31 December 2025');
    // Whether a comma follows the weekday is the locale data's to say.
    assert.match(words.weekdayAndDay(date('2027-01-01'), today), /^Friday,? 1 January 2027$/);
    assert.match(words.weekdayAndDay(today, today), /^Wednesday,? 25 February$/);
  });

  it('do not hang on the zone of the machine: a date is the same day everywhere', () => {
    const before = process.env.TZ;
    try {
      for (const zone of ['Pacific/Kiritimati', 'Pacific/Pago_Pago']) {
        process.env.TZ = zone;
        assert.match(dateWords('en-GB').weekdayAndDay(today, today), /^Wednesday,? 25 February$/);
      }
    } finally {
      if (before === undefined) delete process.env.TZ;
      else process.env.TZ = before;
    }
  });

  it('are English for a language whose name cannot be read', () => {
    assert.equal(dateWords('no_such_language!').weekday(today), 'Wednesday');
  });
});
