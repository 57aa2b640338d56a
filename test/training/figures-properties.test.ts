import assert from 'node:assert/strict';
import fc from 'fast-check';
import { describe, it } from 'mocha';
import { addDays, dayNumber } from '../../src/notation/time/iso-date';
import { addWeeks, isoWeekOf } from '../../src/notation/time/iso-week';
import { adherenceFigures } from '../../src/training/adherence/adherence-figures';
import type { AdherenceShare } from '../../src/training/adherence/adherence-share';
import { plannedSessions } from '../../src/training/adherence/planned-sessions';
import { slide } from '../../src/training/adherence/slide';
import { weekLoads } from '../../src/training/load/week-loads';
import { workloadRatios } from '../../src/training/load/workload-ratios';
import { recoveryFigures } from '../../src/training/recovery/recovery-figures';
import { checkContext } from '../../src/training/week-under-check';
import { date } from './dates';
import { journalFromNotes } from './journal-from-text';

interface Written {
  readonly day: number;
  readonly hour: number;
  readonly kind: 'flexibility' | 'strength';
  readonly minutes: number;
  readonly rating: number | undefined;
  readonly box: 'x' | ' ' | 'tired' | 'sore' | 'ill';
  readonly sore: number | undefined;
}

const begin = date('2025-11-03');
const lastDay = 97;

const sessions: fc.Arbitrary<readonly Written[]> = fc.uniqueArray(
  fc.record({
    day: fc.integer({ min: 0, max: lastDay }),
    hour: fc.integer({ min: 7, max: 20 }),
    kind: fc.constantFrom('flexibility', 'strength'),
    minutes: fc.integer({ min: 2, max: 9 }).map((tens) => 10 * tens),
    rating: fc.option(fc.integer({ min: 1, max: 10 }), { nil: undefined, freq: 20 }),
    box: fc.oneof(
      { weight: 8, arbitrary: fc.constant('x' as const) },
      { weight: 3, arbitrary: fc.constantFrom(' ', 'tired', 'sore', 'ill') },
    ),
    sore: fc.option(fc.integer({ min: 1, max: 8 }), { nil: undefined }),
  }),
  // Two sessions at one hour of one day are told apart by nothing.
  { minLength: 1, maxLength: 60, selector: ({ day, hour }) => `${day} ${hour}` },
);

interface Writing {
  readonly shiftWeeks?: number;
  /** Lengths in hours, such as `1h10`, in place of minutes. */
  readonly inHours?: boolean;
  /** Each line in a note of its own, named so that the last comes first. */
  readonly scattered?: boolean;
  /** Every note once more, as programs leave behind that keep folders alike. */
  readonly copied?: boolean;
}

function notesOf(written: readonly Written[], writing: Writing): Record<string, string> {
  const notes: Record<string, string> = {
    'journal.md':
      '- #routine legs flexibility regions:hamstrings\n- #routine press strength regions:shoulders\n',
  };
  for (const [index, one] of written.entries()) {
    const on = addDays(begin, one.day + 7 * (writing.shiftWeeks ?? 0));
    const path = writing.scattered ? `${on} ${String(99 - index)}.md` : `${on}.md`;
    const [hours, rest] = [Math.floor(one.minutes / 60), one.minutes % 60];
    const inHours = hours === 0 ? `${rest}min` : `${hours}h${rest === 0 ? '' : rest}`;
    const session = [
      `- [${one.box === 'x' ? 'x' : ' '}] #session ${one.kind} ${String(one.hour).padStart(2, '0')}:00`,
      writing.inHours ? inHours : `${one.minutes}min`,
      ...(one.rating === undefined ? [] : [`${one.rating}/10`]),
      `routine:${one.kind === 'flexibility' ? 'legs' : 'press'}`,
      ...(one.box === 'x' || one.box === ' ' ? [] : [`skipped:${one.box}`]),
    ].join(' ');
    const sore = one.sore === undefined ? '' : `- #sore hamstrings ${one.sore}/10\n`;
    notes[path] = `${notes[path] ?? ''}${session}\n${sore}`;
  }
  if (!writing.copied) return notes;
  const copies = Object.entries(notes).map(([path, text]) => [
    path.replace('.md', ' (conflicted copy).md'),
    text,
  ]);
  return { ...notes, ...Object.fromEntries(copies.filter(([path]) => !path?.startsWith('journal'))) };
}

const rounded = (value: number): number => Number(value.toPrecision(9));
const word = (figure: unknown): unknown =>
  typeof figure === 'number'
    ? rounded(figure)
    : typeof figure === 'object' && figure !== null && 'reason' in figure
      ? figure.reason
      : figure;

const shareOf = ({ n, done, missed, unmarked, excused, reasons, share }: AdherenceShare) => [
  ...[n, done, missed, unmarked, excused],
  reasons,
  'status' in share ? share.reason : [rounded(share.lower), rounded(share.upper)],
];

/** Every number of load, recovery and kept sessions, without the dates. */
function numbers(written: readonly Written[], writing: Writing = {}) {
  const today = addDays(begin, lastDay + 3 + 7 * (writing.shiftWeeks ?? 0));
  const journal = journalFromNotes(notesOf(written, writing));
  const context = checkContext(journal, { today, zone: 'UTC' });
  const week = isoWeekOf(today);
  const first = journal.span()?.first ?? 0;
  const planned = plannedSessions(context.weeks, first, dayNumber(today) - 1);
  const { all, byWeek, byKind, byWeekday, byTimeOfDay } = adherenceFigures(planned);
  const drop = slide(planned, dayNumber(today));
  const ratios = workloadRatios(journal, today);
  return {
    loads: weekLoads(journal, { today, first: addWeeks(week, -15), last: week }).map(
      ({ load, minutes, unmarked, spread, change, byKind: kinds, byRegion }) => ({
        load,
        minutes,
        unmarked,
        spread: spread.status === 'estimated' ? [word(spread.monotony), word(spread.strain)] : spread.reason,
        change: change.status === 'estimated' ? rounded(change.percent) : change.reason,
        shares: [...kinds, ...byRegion].map(({ name, load: own }) => [name, own.knownTotal, own.unknown]),
      }),
    ),
    ratios: ratios && [
      ratios.rolling.status === 'estimated' ? rounded(ratios.rolling.ratio) : ratios.rolling.reason,
      ratios.exponential.status === 'estimated'
        ? rounded(ratios.exponential.ratio)
        : ratios.exponential.reason,
    ],
    kept: [all, ...byWeek, ...byKind, ...byWeekday, ...byTimeOfDay].map(shareOf),
    drop: drop.status === 'estimated' ? [drop.score, drop.limit, drop.isSliding, drop.usual.n] : drop.reason,
    recovery: recoveryFigures(context).map(({ subject, pairs, learned, suggestion }) => ({
      subject,
      pairs: pairs.map(({ hours, sore, load }) => [hours, sore, load]),
      learned:
        learned.status === 'estimated'
          ? [learned.hours, learned.interval.lower, learned.interval.upper].map((one) => one.toPrecision(5))
          : [learned.reason, learned.missing],
      suggested: suggestion?.suggestedHours,
    })),
  };
}

const settings = { seed: 20260226, numRuns: 25 } as const;

describe('the figures of load, recovery and kept sessions, whatever the sessions', () => {
  it('do not change when all dates move by whole weeks', () => {
    fc.assert(
      fc.property(sessions, fc.integer({ min: -60, max: 60 }), (written, shiftWeeks) => {
        assert.deepEqual(numbers(written, { shiftWeeks }), numbers(written));
      }),
      settings,
    );
  });

  it('do not depend on the order of the notes or of the lines', () => {
    fc.assert(
      fc.property(
        sessions.chain((written) =>
          fc.tuple(fc.constant(written), fc.shuffledSubarray([...written], { minLength: written.length })),
        ),
        ([written, shuffled]) => {
          const before = numbers(written);
          assert.deepEqual(numbers(shuffled), before);
          assert.deepEqual(numbers(shuffled, { scattered: true }), before);
        },
      ),
      settings,
    );
  });

  it('do not depend on the unit in which a length is written', () => {
    fc.assert(
      fc.property(sessions, (written) => {
        assert.deepEqual(numbers(written, { inHours: true }), numbers(written));
      }),
      settings,
    );
  });

  it('count what a copy of a note repeats once', () => {
    fc.assert(
      fc.property(sessions, (written) => {
        assert.deepEqual(numbers(written, { copied: true }), numbers(written));
      }),
      settings,
    );
  });
});

describe('with few sessions each figure says what is missing', () => {
  const few = (count: number) =>
    numbers(
      Array.from({ length: count }, (_, index) => ({
        day: lastDay - 14 + 7 * index,
        hour: 18,
        kind: 'flexibility',
        minutes: 60,
        rating: 7,
        box: 'x',
        sore: undefined,
      })),
    );

  it('0', () => {
    const { loads, ratios, kept, drop, recovery } = few(0);
    assert.deepEqual([loads, ratios, recovery], [[], undefined, []]);
    assert.equal(kept[0]?.at(-1), 'no-planned-sessions');
    assert.equal(drop, 'too-few-sessions');
  });

  for (const count of [1, 2, 3]) {
    it(String(count), () => {
      const { loads, ratios, kept, drop, recovery } = few(count);
      assert.deepEqual(
        ratios,
        ['too-few-days', 'too-few-days'],
        'there are no 28 days behind the first session',
      );
      assert.equal(loads.at(-1)?.spread, 'too-few-days');
      // The first week is not whole, as the journal begins on its Sunday: it is no measure for the running one.
      assert.deepEqual(
        loads.map(({ change }) => change),
        ['too-few-weeks', 'too-few-weeks', 'too-few-weeks', 'unknown-loads'],
      );
      assert.deepEqual(kept[0]?.slice(0, 2), [count, count]);
      assert.equal(drop, 'too-few-sessions');
      const [flexibility] = recovery;
      if (count === 1) assert.deepEqual(flexibility?.pairs, []);
      assert.deepEqual(flexibility?.learned, [
        'too-few-pairs',
        [
          { what: 'pairs', have: count - 1, need: 12 },
          { what: 'still-sore', have: 0, need: 4 },
          ...(count - 1 < 4 ? [{ what: 'ready', have: count - 1, need: 4 }] : []),
        ],
      ]);
    });
  }
});
