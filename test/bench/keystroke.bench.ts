/**
 * From a keystroke in today's note to the findings that are published, in journals of different age: all of them by
 * turns, so that a machine that slows down slows all.
 */
import { JournalIndex } from '../../src/journal/journal-index';
import { openNote, openNoteForLater } from '../../src/journal/open-note';
import type { IsoDate } from '../../src/notation/time/iso-date';
import { addWeeks, isoWeekOf } from '../../src/notation/time/iso-week';
import { PublishedFindings } from '../../src/training/published-findings';
import { generateJournal } from './generate-journal';
import { isFirst } from './journal-on-disk';
import { measure, printMeasurement, quantile, summarize } from './measure';
import { digits, printRow, withSpread } from './table';

const today = '2026-03-01' as IsoDate;
const path = `log/2026/${today}.md`;
const weeks = [-1, 0, 1, 2].map((offset) => addWeeks(isoWeekOf(today), offset));
const view = { today, zone: 'Europe/Lisbon', weeks, openNotes: new Set([path]) };
const sizes = [100, 1000, 10_000, 100_000];

/** One key in today's note of a journal with so many day notes. */
function keyboard(dayNotes: number): () => unknown {
  const notes = generateJournal({ dayNotes, last: today, seed: 2026 });
  const journal = new JournalIndex('');
  for (const [note, text] of notes)
    journal.replace(isFirst(note) ? openNote(note, text) : openNoteForLater(note, text));
  const findings = new PublishedFindings(journal);
  findings.refresh(view);
  const text = notes.get(path) ?? '';
  let keys = 0;
  return () => {
    keys += 1;
    journal.replace(openNote(path, `${text}${'x'.repeat(keys % 40)}\n`));
    return findings.refresh(view, new Set([path]));
  };
}

const keyboards = sizes.map(keyboard);
const times = sizes.map((): number[] => []);
for (let round = -50; round < 500; round += 1) {
  for (const [index, key] of keyboards.entries()) {
    const { median } = await measure(key, { warmUp: 0, runs: 1 });
    if (round >= 0) times[index]?.push(median);
  }
}
const figures = times.map((all) => ({
  ...summarize(all),
  p99: quantile(
    [...all].sort((a, b) => a - b),
    0.99,
  ),
}));
for (const [index, figure] of figures.entries()) {
  const dayNotes = sizes[index]?.toLocaleString('en') ?? '';
  printMeasurement(`keystroke to findings, ${dayNotes} day notes`, figure);
  printRow(
    `Keystroke to findings, ${dayNotes} notes: median and 99th percentile`,
    index === 2 ? 'under 2 ms and under 8 ms' : '',
    `${withSpread(figure, ' ms')}; ${digits(figure.p99)} ms`,
  );
}
// Least squares of the medians on the decimal logarithm of the number of notes.
const exponents = sizes.map((size) => Math.log10(size));
const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
const [x, y] = [mean(exponents), mean(figures.map(({ median }) => median))];
const slope =
  exponents.reduce((sum, exponent, index) => sum + (exponent - x) * ((figures[index]?.median ?? 0) - y), 0) /
  exponents.reduce((sum, exponent) => sum + (exponent - x) ** 2, 0);
printRow(
  'Growth of that median from 100 to 100,000 notes',
  'none',
  `${slope.toFixed(2)} ms for ten times as many`,
);
