import type { Goal } from '../../journal/journal';
import type { Note } from '../../journal/note';
import { nearestWord } from '../../notation/near-miss';
import type { Located } from '../../notation/source-range';
import type { Finding } from '../finding';
import { goalsInNote } from '../metric-meant';
import { entryPlace, related } from '../session-place';
import { message } from '../wording';
import type { NoteRule } from './note-rule';

function unknown(note: Note, named: Located<string>, goal: Goal): readonly Finding[] {
  const names = goal.metrics.map((metric) => metric.name);
  if (names.includes(named.value)) return [];
  const suggestion = nearestWord(named.value, names);
  return [
    {
      code: 'unknown-metric',
      severity: 'warning',
      note: note.path,
      range: named.range,
      message:
        suggestion === undefined
          ? message('The goal {1} has no metric {0}', named.value, goal.id)
          : message('The goal {1} has no metric {0}; did you mean {2}?', named.value, goal.id, suggestion),
      facts: { goal: goal.id, metric: named.value, ...(suggestion === undefined ? {} : { suggestion }) },
      related: [related(entryPlace(goal), message('The goal'))],
      remedies: suggestion === undefined ? ['add-metric'] : ['replace-text', 'add-metric'],
    },
  ];
}

/** A reading or step of a goal with several metrics that does not say which. */
function unsaid(note: Note, place: Located<string>, goal: Goal): readonly Finding[] {
  if (goal.metrics.length < 2) return [];
  const names = goal.metrics.map((metric) => metric.name).join(', ');
  return [
    {
      code: 'unknown-metric',
      severity: 'warning',
      note: note.path,
      range: place.range,
      message: message('The goal {0} has several metrics; say which: {1}', goal.id, names),
      facts: { goal: goal.id, metrics: names },
      related: [related(entryPlace(goal), message('The goal'))],
      remedies: [],
    },
  ];
}

/**
 * A measurement or a step names a metric that its goal does not have, or none where the goal has several.
 *
 * A journal that breaks it:
 *
 *     goals.md
 *     - #goal low-split by:2026-06-14
 *     - #metric gap from:14cm to:0cm
 *     2026-02-24.md
 *     - #measure low-split gapp 9.5cm
 *
 * A journal that does not:
 *
 *     goals.md
 *     - #goal low-split by:2026-06-14
 *     - #metric gap from:14cm to:0cm
 *     2026-02-24.md
 *     - #measure low-split gap 9.5cm
 *     - #measure low-split 9.7cm
 */
export const unknownMetric: NoteRule = {
  code: 'unknown-metric',
  check(note, journal) {
    const readings = note.reading.entries.flatMap((entry) => {
      if (entry.tag !== 'measure' || !entry.goal || !entry.quantity) return [];
      const goal = journal.plan.goals.get(entry.goal.value);
      if (!goal) return [];
      return entry.metric ? unknown(note, entry.metric, goal) : unsaid(note, entry.goal, goal);
    });
    const steps = goalsInNote(note, journal).flatMap((goal) =>
      goal.steps.flatMap(({ entry }) => {
        if (entry.metric) return unknown(note, entry.metric, goal);
        return entry.to && entry.id ? unsaid(note, entry.id, goal) : [];
      }),
    );
    return [...readings, ...steps];
  },
};
