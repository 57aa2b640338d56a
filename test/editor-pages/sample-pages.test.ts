import assert from 'node:assert/strict';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { goalPageData } from '../../src/editor/goal-page/page-data';
import { wordsOf } from '../../src/editor/words';
import { JournalIndex } from '../../src/journal/journal-index';
import { openNote } from '../../src/journal/open-note';
import type { IsoDate } from '../../src/notation/time/iso-date';
import { fillMessage } from '../../src/training/finding';
import { goalFigures } from '../../src/training/progress/goal-figures';
import type { SeriesFigures } from '../../src/training/progress/metric-figures';
import { isRefused } from '../../src/training/progress/metric-trend';

const today = '2026-02-26' as IsoDate;
const folder = join(process.cwd(), 'sample-journal', 'athlete');

function sample(): JournalIndex {
  const journal = new JournalIndex();
  for (const entry of readdirSync(folder, { recursive: true, withFileTypes: true })) {
    if (!entry.isFile() || !entry.name.endsWith('.md')) continue;
    const path = join(entry.parentPath, entry.name);
    journal.replace(
      openNote(path.slice(folder.length + 1).replaceAll('\\', '/'), readFileSync(path, 'utf8')),
    );
  }
  return journal;
}

/** The numbers in words, without those of dates and of the "95 %". */
function numbersIn(words: string): readonly number[] {
  const plain = words
    .replace(/\u00a0/g, ' ')
    .replace(/[A-Z][a-z]+ \d{1,2}(, \d{4})?/g, '')
    .replace(/95 %/g, '')
    .replace(/PMC\d+/g, '');
  return [...plain.matchAll(/-?\d+(?:\.\d+)?/g)].map(([found]) => Number(found));
}

const rounded = (value: number): number => Number(value.toFixed(2)) + 0;

/** Every number that the figures of a series hold: each is worked out a second way among the tests of the figures. */
function numbersOf(series: SeriesFigures): ReadonlySet<number> {
  const { trend, noise, sinceFirst, sinceLast, pace, plateau, days, readings } = series;
  const all: number[] = [days.length, readings.length, noise.typicalError, noise.detectableChange, noise.n];
  const chances: number[] = [];
  if (noise.interval) all.push(noise.interval.lower, noise.interval.upper);
  if (!isRefused(trend)) {
    all.push(trend.perWeek, trend.n);
    if (!('status' in trend.perWeekInterval)) {
      all.push(trend.perWeekInterval.lower, trend.perWeekInterval.upper);
    }
    // A chance below a thousandth is said to be so.
    if (trend.test.status === 'estimated') chances.push(Number(trend.test.p.toFixed(3)), 0.001);
  }
  for (const change of [sinceFirst, sinceLast]) {
    if (change.status === 'estimated') all.push(change.change, change.noise);
  }
  if (pace.status === 'estimated') all.push(pace.perWeek);
  if (plateau.status === 'estimated')
    all.push(plateau.change, plateau.weeks, plateau.n, plateau.sessionsDone);
  for (const refused of [trend, series.forecast, sinceFirst, sinceLast, plateau, pace]) {
    if ('missing' in refused) all.push(...refused.missing.flatMap(({ have, need }) => [have, need]));
  }
  if (!isRefused(trend) && 'status' in trend.perWeekInterval) {
    all.push(...trend.perWeekInterval.missing.flatMap(({ have, need }) => [have, need]));
  }
  if (!isRefused(trend) && trend.test.status === 'not-estimable') {
    all.push(...trend.test.missing.flatMap(({ have, need }) => [have, need]));
  }
  // What an assumed error is said to stand on.
  if (noise.source) all.push(...noise.source.values.filter((value) => typeof value === 'number'), 50);
  return new Set([...all.map(rounded), ...chances]);
}

describe('the goal page of the sample athlete', () => {
  const journal = sample();
  const open = { id: 'file:///ilka', title: 'Ilka', journal, today: () => today };
  const page = goalPageData(open, '', wordsOf('en', fillMessage), 'en');

  for (const goal of page.goals) {
    const figures = goalFigures(journal, goal.id, { today });
    for (const [index, metric] of goal.metrics.entries()) {
      const own = figures?.metrics[index];

      it(`has a column for each series of ${metric.name}, and no number that is not one of its figures`, () => {
        assert.ok(own && metric.figures);
        assert.equal(metric.figures.columns.length, own.series.length);
        let read = 0;
        for (const [column, series] of own.series.entries()) {
          const allowed = numbersOf(series);
          for (const { name, cells } of metric.figures.rows) {
            for (const number of numbersIn(cells[column] ?? '')) {
              read += 1;
              assert.ok(allowed.has(number), `${name}: ${number} in "${cells[column]}"`);
            }
          }
        }
        assert.ok(read > 10 * own.series.length, `${read} numbers are read`);
      });

      it(`says of ${metric.name} in sentences only what its table says`, () => {
        assert.ok(own);
        const main = own.series.filter(({ isMain }) => isMain);
        const allowed = new Set(main.flatMap((series) => [...numbersOf(series)]));
        const sentences = [...metric.verdicts, ...metric.sentences].filter(
          (sentence) => !/^(From|The target|Latest|Left: \d|Right: \d)/.test(sentence),
        );
        assert.ok(sentences.length >= 1);
        for (const sentence of sentences) {
          for (const number of numbersIn(sentence)) {
            assert.ok(allowed.has(number), `${number} in "${sentence}"`);
          }
        }
      });
    }
  }
});
