import type { Goal, Journal, Metric } from '../journal/journal';
import type { Note } from '../journal/note';
import type { Unit } from '../notation/quantity';

/** The goals whose lines stand in `note`, those among them whose name another goal took first. */
export function goalsInNote(note: Note, journal: Journal): readonly Goal[] {
  return [...journal.plan.goals.values(), ...journal.plan.duplicateGoals].filter(
    (goal) => goal.note === note.path,
  );
}

/** The metric that is meant by a name, or by no name in a goal that has only one. */
export function metricMeant(goal: Goal, name: string | undefined): Metric | undefined {
  if (name !== undefined) return goal.metrics.find((metric) => metric.name === name);
  return goal.metrics.length === 1 ? goal.metrics[0] : undefined;
}

/** The unit in which a metric is shown: that of its target, else of its first reading. */
export function metricUnit(metric: Metric): Unit | undefined {
  return metric.to?.unit ?? metric.from?.unit;
}
