import * as vscode from 'vscode';
import type { Note } from '../../journal/note';
import type { MeasureEntry } from '../../notation/entries';
import { dayNumber, type IsoDate } from '../../notation/time/iso-date';
import { metricMeant } from '../../training/metric-meant';
import { type DayReading, type MetricProgress, metricProgress } from '../../training/metric-progress';
import { type MeasuringNoise, measuringNoise } from '../../training/progress/measuring-noise';
import { type ReadingChange, readingChange } from '../../training/progress/reading-change';
import { readingSeries } from '../../training/progress/reading-series';
import { editorWords } from '../editor-words';
import { noiseBasis } from '../goal-page/figure-sentences';
import type { OpenJournal } from '../open-journal';
import { type PageContext, preciseInWords } from '../page/page-context';
import type { Words } from '../words';
import { escaped, quantityWords } from './words';

/** The day of `day` with its readings, and how it differs from the one before it, of the same side and state. */
function readingOfDay(
  metric: MetricProgress,
  entry: MeasureEntry,
  day: number,
): { readonly current?: DayReading; readonly change?: ReadingChange; readonly noise?: MeasuringNoise } {
  const side = entry.side?.value;
  const days =
    readingSeries(metric).find((one) => one.side === side && one.condition === entry.condition?.value)
      ?.days ?? [];
  const current = days.find((one) => one.day === day);
  const last = days.filter((one) => one.day < day).at(-1);
  const noise = measuringNoise(metric, metric.series.find((one) => one.side === side)?.readings ?? []);
  return {
    ...(current ? { current } : {}),
    ...(noise ? { noise } : {}),
    ...(current && last && noise
      ? { change: readingChange(last, current, noise, metric.lowerIsBetter) }
      : {}),
  };
}

function changeLine(metric: MetricProgress, found: ReadingChange, words: Words, today: IsoDate): string {
  const { change, direction, from } = found;
  const size = quantityWords(words, Math.abs(change), metric.unit);
  const before = quantityWords(words, from.value, metric.unit);
  const date = words.dates.day(from.date, today);
  switch (direction) {
    case 'same':
      return vscode.l10n.t('The same as on {0}.', date);
    case 'nearer':
      return vscode.l10n.t('{0} nearer to the target than {1} on {2}.', size, before, date);
    case 'further':
      return vscode.l10n.t('{0} further from the target than {1} on {2}.', size, before, date);
    default:
      return change < 0
        ? vscode.l10n.t('{0} less than {1} on {2}.', size, before, date)
        : vscode.l10n.t('{0} more than {1} on {2}.', size, before, date);
  }
}

/** Whether the change is more than measuring alone explains, and where that is known from. */
function noiseLine(
  metric: MetricProgress,
  found: ReadingChange,
  noise: MeasuringNoise,
  context: PageContext,
): string {
  const size = preciseInWords(context, found.noise, metric.unit);
  const basis = noiseBasis(noise, metric.unit, context);
  return found.withinNoise
    ? vscode.l10n.t('That is within measuring noise: up to {0} (typical error {1}).', size, basis)
    : vscode.l10n.t('That is more than measuring noise: up to {0} (typical error {1}).', size, basis);
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
  const { current, change, noise } = readingOfDay(metric, entry, dayNumber(note.name.date));
  if (!current) return undefined;
  const words = editorWords();
  const context = { words, today: journal.today() };
  return [
    heading(metric, entry, current, words),
    ...(change && noise
      ? [
          changeLine(metric, change, words, context.today),
          // The words about the noise quote nothing that a note says.
          noiseLine(metric, change, noise, context),
        ]
      : [vscode.l10n.t('The first reading of its kind.')]),
    ...targetLine(metric, current, words),
  ];
}
