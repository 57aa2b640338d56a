import * as vscode from 'vscode';
import type { Note } from '../../journal/note';
import type { MeasureEntry } from '../../notation/entries';
import { dayNumber, type IsoDate } from '../../notation/time/iso-date';
import { metricMeant } from '../../training/metric-meant';
import {
  averagedByDay,
  type DayReading,
  type MetricProgress,
  metricProgress,
} from '../../training/metric-progress';
import { editorWords } from '../editor-words';
import type { OpenJournal } from '../open-journal';
import type { Words } from '../words';
import { escaped, quantityWords } from './words';

/** The day of `day`, and the one before it, among the readings of the same side and state. */
function comparedDays(
  metric: MetricProgress,
  entry: MeasureEntry,
  day: number,
): { readonly current?: DayReading; readonly last?: DayReading } {
  const series = metric.series.find((one) => one.side === entry.side?.value);
  const alike = series?.readings.filter((one) => one.condition === entry.condition?.value) ?? [];
  const days = averagedByDay(alike);
  const current = days.find((one) => one.day === day);
  const last = days.filter((one) => one.day < day).at(-1);
  return { ...(current ? { current } : {}), ...(last ? { last } : {}) };
}

function changeLine(
  metric: MetricProgress,
  current: DayReading,
  last: DayReading,
  words: Words,
  today: IsoDate,
): string {
  const change = current.value - last.value;
  const size = quantityWords(words, Math.abs(change), metric.unit);
  const before = quantityWords(words, last.value, metric.unit);
  const date = words.dates.day(last.date, today);
  if (change === 0) return vscode.l10n.t('The same as on {0}.', date);
  if (metric.lowerIsBetter === undefined) {
    return change < 0
      ? vscode.l10n.t('{0} less than {1} on {2}.', size, before, date)
      : vscode.l10n.t('{0} more than {1} on {2}.', size, before, date);
  }
  return metric.lowerIsBetter === change < 0
    ? vscode.l10n.t('{0} nearer to the target than {1} on {2}.', size, before, date)
    : vscode.l10n.t('{0} further from the target than {1} on {2}.', size, before, date);
}

function noiseLine(metric: MetricProgress, current: DayReading, last: DayReading, words: Words) {
  const { noise } = metric;
  if (noise === undefined || Math.abs(current.value - last.value) > noise) return [];
  return [
    vscode.l10n.t('That is within the measuring error of {0}.', quantityWords(words, noise, metric.unit)),
  ];
}

function targetLine(metric: MetricProgress, current: DayReading, words: Words): readonly string[] {
  const { target, lowerIsBetter } = metric;
  if (target === undefined) return [];
  const wanted = quantityWords(words, target, metric.unit);
  const left = lowerIsBetter ? current.value - target : target - current.value;
  return left <= 0
    ? [vscode.l10n.t('The target of {0} is reached.', wanted)]
    : [vscode.l10n.t('{0} to go to the target of {1}.', quantityWords(words, left, metric.unit), wanted)];
}

function heading(metric: MetricProgress, entry: MeasureEntry, current: DayReading, words: Words): string {
  const name = `**${escaped(metric.name)}**`;
  const side = entry.side?.value;
  const value = quantityWords(words, current.value, metric.unit);
  const where =
    side === undefined
      ? value
      : side === 'left'
        ? vscode.l10n.t('{0} on the left', value)
        : vscode.l10n.t('{0} on the right', value);
  return current.count === 1
    ? vscode.l10n.t('{0}: {1}.', name, where)
    : vscode.l10n.t('{0}: {1}, the mean of {2} readings of the day.', name, where, current.count);
}

/** A reading in words: its change since the last day measured in the same way, and what is left. */
export function measureHover(
  journal: OpenJournal,
  note: Note,
  entry: MeasureEntry,
): readonly string[] | undefined {
  if (note.name.kind !== 'day' || !entry.goal || !entry.quantity) return undefined;
  const goal = journal.journal.plan.goals.get(entry.goal.value);
  const meant = goal && metricMeant(goal, entry.metric?.value);
  if (!goal || !meant) return undefined;
  const metric = metricProgress(meant, journal.journal.measurements(goal.id, meant.name));
  const { current, last } = comparedDays(metric, entry, dayNumber(note.name.date));
  if (!current) return undefined;
  const words = editorWords();
  return [
    heading(metric, entry, current, words),
    ...(last
      ? [
          changeLine(metric, current, last, words, journal.today()),
          ...noiseLine(metric, current, last, words),
        ]
      : [vscode.l10n.t('The first reading of its kind.')]),
    ...targetLine(metric, current, words),
  ];
}
