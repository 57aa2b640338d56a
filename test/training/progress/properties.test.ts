import assert from 'node:assert/strict';
import fc from 'fast-check';
import { describe, it } from 'mocha';
import { addDays, daysBetween, type IsoDate } from '../../../src/notation/time/iso-date';
import type { SeriesFigures } from '../../../src/training/progress/metric-figures';
import { date } from '../dates';
import { metricOf, type Notes } from './figures-of';

interface Written {
  readonly day: number;
  readonly millimetres: number;
  readonly condition: 'warm' | 'cold';
}

const begin = date('2025-11-03');

const readings: fc.Arbitrary<readonly Written[]> = fc.array(
  fc.record({
    day: fc.integer({ min: 0, max: 90 }),
    millimetres: fc.integer({ min: 10, max: 300 }),
    condition: fc.constantFrom('warm', 'cold'),
  }),
  { minLength: 1, maxLength: 25 },
);

interface Writing {
  readonly shiftDays?: number;
  readonly unit?: 'mm' | 'cm' | 'm';
  /** Puts each reading in a note of its own, in another order of names. */
  readonly scattered?: boolean;
}

const perUnit = { mm: 1, cm: 10, m: 1000 } as const;

function notesOf(
  written: readonly Written[],
  { shiftDays = 0, unit = 'mm', scattered }: Writing = {},
): Notes {
  const shifted = (day: IsoDate): IsoDate => addDays(day, shiftDays);
  const amount = (millimetres: number): string => `${(millimetres / perUnit[unit]).toFixed(6)}${unit}`;
  const notes: Record<string, string> = {
    'goals.md': `- #goal low-split by:${shifted(date('2026-06-14'))}\n- #metric gap from:${amount(301)} to:${amount(5)}\n`,
  };
  for (const [index, { day, millimetres, condition }] of written.entries()) {
    const own = shifted(addDays(begin, day));
    const path = scattered ? `${own} ${String(written.length - index).padStart(2, '0')}.md` : `${own}.md`;
    // Words make each line its own: the same line in two notes of a day is a copy, and counts once.
    notes[path] =
      `${notes[path] ?? ''}- #measure low-split gap ${amount(millimetres)} ${condition} -- ${index}\n`;
  }
  return notes;
}

const today = (shiftDays = 0): string => addDays(date('2026-02-08'), shiftDays);

function figures(written: readonly Written[], writing: Writing = {}): readonly SeriesFigures[] {
  return metricOf(notesOf(written, writing), today(writing.shiftDays)).series;
}

function close(one: number, other: number, about: string): void {
  const tolerance = 1e-9 * Math.max(1, Math.abs(one), Math.abs(other));
  assert.ok(Math.abs(one - other) <= tolerance, `${about}: ${one} and ${other}`);
}

/** The numbers of a series, in its unit; dates left out. */
function numbers({
  trend,
  noise,
  sinceFirst,
  sinceLast,
  pace,
  plateau,
}: SeriesFigures): Record<string, number> {
  const found: Record<string, number> = { typicalError: noise.typicalError };
  if (trend.status === 'estimated') {
    found.perWeek = trend.perWeek;
    if (!('status' in trend.perWeekInterval)) {
      found.lower = trend.perWeekInterval.lower;
      found.upper = trend.perWeekInterval.upper;
    }
  }
  if (sinceFirst.status === 'estimated') found.sinceFirst = sinceFirst.change;
  if (sinceLast.status === 'estimated') found.sinceLast = sinceLast.change;
  if (pace.status === 'estimated') found.pace = pace.perWeek;
  if (plateau.status === 'estimated') found.plateau = plateau.change;
  return found;
}

/** What is said of a series in words: states, reasons, codes. */
function words({ side, condition, isMain, trend, forecast, pace, plateau, verdict, noise }: SeriesFigures) {
  const word = (figure: { readonly status: string; readonly reason?: string }) =>
    figure.reason ?? figure.status;
  return [
    side,
    condition,
    isMain,
    word(trend),
    word(forecast),
    word(pace),
    word(plateau),
    verdict.code,
    noise.basis,
  ];
}

function sameFigures(one: readonly SeriesFigures[], other: readonly SeriesFigures[], scale = 1): void {
  assert.deepEqual(other.map(words), one.map(words));
  for (const [index, series] of one.entries()) {
    const second = other[index] ?? assert.fail();
    const [before, after] = [numbers(series), numbers(second)];
    assert.deepEqual(Object.keys(after), Object.keys(before));
    for (const [name, value] of Object.entries(before)) close(value * scale, after[name] ?? Number.NaN, name);
  }
}

const settings = { seed: 20260225, numRuns: 50 } as const;

describe('the figures of a metric, whatever the readings', () => {
  it('move along when all dates move by whole weeks', () => {
    fc.assert(
      fc.property(readings, fc.integer({ min: -60, max: 60 }), (written, weeks) => {
        const [before, after] = [figures(written), figures(written, { shiftDays: 7 * weeks })];
        sameFigures(before, after);
        for (const [index, { forecast }] of before.entries()) {
          const moved = after[index]?.forecast;
          if (forecast.status !== 'estimated' || moved?.status !== 'estimated') continue;
          // A day more or less where the last digit decides which way a date is rounded.
          const off = daysBetween(forecast.latest, moved.latest) - 7 * weeks;
          assert.ok(Math.abs(off) <= 1, `${forecast.latest} and ${moved.latest}`);
        }
      }),
      settings,
    );
  });

  it('scale with the unit', () => {
    fc.assert(
      fc.property(readings, fc.constantFrom('cm', 'm'), (written, unit) => {
        sameFigures(figures(written), figures(written, { unit }), 1 / perUnit[unit]);
      }),
      settings,
    );
  });

  it('do not depend on the order of the notes or of the lines', () => {
    fc.assert(
      fc.property(
        readings.chain((written) =>
          fc.tuple(fc.constant(written), fc.shuffledSubarray([...written], { minLength: written.length })),
        ),
        ([written, shuffled]) => {
          sameFigures(figures(written), figures(shuffled));
          sameFigures(figures(written), figures(written, { scattered: true }));
        },
      ),
      settings,
    );
  });

  it('are not moved by a day that is written twice: neither slope, nor test, nor dates', () => {
    fc.assert(
      fc.property(readings, fc.integer({ min: 0, max: 24 }), (written, which) => {
        const again = written[which % written.length];
        assert.ok(again);
        const sameDay = written.filter(
          ({ day, condition }) => day === again.day && condition === again.condition,
        );
        const doubled = [...written, ...sameDay];
        const [before, after] = [figures(written), figures(doubled)];
        assert.deepEqual(
          after.map(({ days }) => days.map(({ day }) => day)),
          before.map(({ days }) => days.map(({ day }) => day)),
        );
        for (const [index, { trend }] of before.entries()) {
          const second = after[index]?.trend;
          if (trend.status !== 'estimated' || second?.status !== 'estimated') continue;
          close(trend.perWeek, second.perWeek, 'slope');
          assert.equal(second.n, trend.n);
          assert.deepEqual(second.test.status, trend.test.status);
        }
      }),
      settings,
    );
  });

  it('never give a date without an interval, nor one before today in the sentence', () => {
    fc.assert(
      fc.property(readings, (written) => {
        for (const { trend, forecast, verdict } of figures(written)) {
          if (forecast.status === 'estimated') {
            assert(trend.status === 'estimated' && !('status' in trend.perWeekInterval));
            assert.ok(trend.perWeekInterval.upper < 0, 'the whole interval falls towards the target');
          }
          if (verdict.earliest !== undefined) assert.ok(verdict.earliest >= today());
          if (verdict.latest !== undefined) assert.ok(verdict.latest >= (verdict.earliest ?? ''));
        }
      }),
      settings,
    );
  });
});
