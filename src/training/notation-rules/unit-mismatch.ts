import type { Metric } from '../../journal/journal';
import type { Note } from '../../journal/note';
import { dimensionOf, type Quantity } from '../../notation/quantity';
import type { Located } from '../../notation/source-range';
import type { Finding } from '../finding';
import { goalsInNote, metricMeant, metricUnit } from '../metric-meant';
import { entryPlace, related } from '../session-place';
import { message } from '../wording';
import type { NoteRule } from './note-rule';

function mismatch(
  note: Note,
  quantity: Located<Quantity> | undefined,
  metric: Metric | undefined,
): readonly Finding[] {
  const unit = metric && metricUnit(metric);
  if (!quantity || !metric || !unit || dimensionOf(quantity.value.unit) === dimensionOf(unit)) return [];
  const written = note.text.slice(quantity.range.start, quantity.range.end);
  const number = quantity.value.attempts ? undefined : /^[-+−]?\d+(?:[.,]\d+)?/.exec(written)?.[0];
  const suggestion = number === undefined ? undefined : `${number}${unit}`;
  return [
    {
      code: 'unit-mismatch',
      severity: 'warning',
      note: note.path,
      range: quantity.range,
      message: message(
        '{0} does not go with the metric {1}, which is measured in {2}',
        written,
        metric.name,
        unit,
      ),
      facts: {
        ...(metric.goal === undefined ? {} : { goal: metric.goal }),
        metric: metric.name,
        unit,
        text: written,
        ...(suggestion === undefined ? {} : { suggestion }),
      },
      related: [related(entryPlace(metric), message('The metric'))],
      remedies: suggestion === undefined ? [] : ['replace-text'],
    },
  ];
}

/**
 * A reading, a step or a metric's own first reading or noise has a unit that cannot be converted to the metric's:
 * that of its target, or else of its first reading.
 *
 * A journal that breaks it:
 *
 *     goals.md
 *     - #goal low-split by:2026-06-14
 *     - #metric gap from:14cm to:0cm
 *     2026-02-24.md
 *     - #measure low-split gap 9.5deg
 *
 * A journal that does not:
 *
 *     goals.md
 *     - #goal low-split by:2026-06-14
 *     - #metric gap from:14cm to:0cm
 *     2026-02-24.md
 *     - #measure low-split gap 95mm
 */
export const unitMismatch: NoteRule = {
  code: 'unit-mismatch',
  check(note, journal) {
    const readings = note.reading.entries.flatMap((entry) => {
      const goal =
        entry.tag === 'measure' && entry.goal ? journal.plan.goals.get(entry.goal.value) : undefined;
      if (entry.tag !== 'measure' || !goal) return [];
      return mismatch(note, entry.quantity, metricMeant(goal, entry.metric?.value));
    });
    const plans = goalsInNote(note, journal).flatMap((goal) => [
      ...goal.metrics.flatMap((metric) =>
        [metric.entry.from, metric.entry.noise].flatMap((quantity) => mismatch(note, quantity, metric)),
      ),
      ...goal.steps.flatMap((step) => mismatch(note, step.entry.to, metricMeant(goal, step.metric))),
    ]);
    return [...readings, ...plans];
  },
};
