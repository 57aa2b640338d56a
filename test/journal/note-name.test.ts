import assert from 'node:assert/strict';
import fc from 'fast-check';
import { describe, it } from 'mocha';
import { readNoteName } from '../../src/journal/note-name';
import { isoDate } from '../../src/notation/time/iso-date';
import { isoWeekOfDay } from '../../src/notation/time/iso-week';

describe('the name of a note', () => {
  for (const [name, date] of [
    ['2026-02-24.md', '2026-02-24'],
    ['2026-02-24.MD', '2026-02-24'],
    ['2026-02-24 evening.md', '2026-02-24'],
    ['2026-02-24 (conflicted copy).md', '2026-02-24'],
    ['2026-02-24-evening.md', '2026-02-24'],
    ['2026-02-24Abend.md', '2026-02-24'],
    ['2026-02-24 2026-02-25.md', '2026-02-24'],
    ['log/2025/2026-02-24.md', '2026-02-24'],
    ['2024-02-29.md', '2024-02-29'],
  ] as const) {
    it(`${name} is a day note of ${date}`, () => {
      assert.deepEqual(readNoteName(name), { kind: 'day', date });
    });
  }

  for (const [name, week] of [
    ['2026-W09.md', '2026-W09'],
    ['2026-W53.md', '2026-W53'],
    ['2026-W09 review.md', '2026-W09'],
    ['weeks/2026-W09.Md', '2026-W09'],
  ] as const) {
    it(`${name} is the week note of ${week}`, () => {
      assert.deepEqual(readNoteName(name), { kind: 'week', week });
    });
  }

  for (const [name, badDate] of [
    ['2026-02-30.md', '2026-02-30'],
    ['2026-02-29.md', '2026-02-29'],
    ['2026-13-01 evening.md', '2026-13-01'],
    ['2026-00-10.md', '2026-00-10'],
    ['2025-W53.md', '2025-W53'],
    ['2026-W00.md', '2026-W00'],
    ['2026-W54 review.md', '2026-W54'],
  ] as const) {
    it(`${name} begins with ${badDate}, which does not exist`, () => {
      assert.deepEqual(readNoteName(name), { kind: 'other', badDate });
    });
  }

  for (const name of [
    'journal.md',
    'goals.md',
    'notes 2026-02-24.md',
    '2026-02-241.md',
    '2026-02-2.md',
    '20260224.md',
    '12026-02-24.md',
    '2026-W9.md',
    '2026-W091.md',
    '2026-w09.md',
    '2026-02-24/words.md',
    '.md',
    '',
  ]) {
    it(`"${name}" is neither`, () => {
      assert.deepEqual(readNoteName(name), { kind: 'other' });
    });
  }

  it('finds every day and every week that it is given', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -700_000, max: 2_000_000 }),
        fc.constantFrom('', ' evening', ' (2)', '-b', '_'),
        (day, words) => {
          const date = isoDate(day);
          assert.deepEqual(readNoteName(`a/${date}${words}.md`), { kind: 'day', date });
          const week = isoWeekOfDay(day);
          assert.deepEqual(readNoteName(`${week}${words}.md`), { kind: 'week', week });
        },
      ),
      { seed: 2026 },
    );
  });
});
