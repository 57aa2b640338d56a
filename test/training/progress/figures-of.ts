import assert from 'node:assert/strict';
import { fillMessage } from '../../../src/training/finding';
import { type GoalFigures, goalFigures } from '../../../src/training/progress/goal-figures';
import type { MetricFigures, SeriesFigures } from '../../../src/training/progress/metric-figures';
import { date } from '../dates';
import { journalFromNotes } from '../journal-from-text';

/** Notes by path. */
export type Notes = Readonly<Record<string, string>>;

/** The figures of the goal `low-split`. */
export function figuresOf(notes: Notes, today: string): GoalFigures {
  const figures = goalFigures(journalFromNotes(notes), 'low-split', { today: date(today) });
  assert.ok(figures, 'there is a goal low-split');
  return figures;
}

/** The figures of its one metric. */
export function metricOf(notes: Notes, today: string): MetricFigures {
  const [metric, ...more] = figuresOf(notes, today).metrics;
  assert.ok(metric && more.length === 0, 'the goal has one metric');
  return metric;
}

/** The one series of its one metric. */
export function seriesOf(notes: Notes, today: string): SeriesFigures {
  const [series, ...more] = metricOf(notes, today).series;
  assert.ok(series && more.length === 0, 'the metric has one series');
  return series;
}

/** The sentence of a series. */
export function verdictOf(notes: Notes, today: string): string {
  const { verdict } = seriesOf(notes, today);
  return `${verdict.code}: ${fillMessage(verdict.message)}`;
}

/** A goal with one metric, and a reading a day: `{ '2026-02-02': '14cm' }`. */
export function withReadings(
  readings: Readonly<Record<string, string>>,
  goal = '- #goal low-split by:2026-06-14\n- #metric gap from:14cm to:0cm',
): Record<string, string> {
  const notes: Record<string, string> = { 'goals.md': goal };
  for (const [day, value] of Object.entries(readings)) {
    const lines = value.split(' + ').map((one) => `- #measure low-split gap ${one}\n`);
    notes[`${day}.md`] = lines.join('');
  }
  return notes;
}
