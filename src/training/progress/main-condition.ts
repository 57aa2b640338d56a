import type { Reading } from '../reading';

/** The state in which a reading was taken; `undefined` where the note does not say. */
export type Condition = 'warm' | 'cold' | undefined;

/** How many days of a metric were measured in a state. */
export interface ConditionDays {
  readonly condition: Condition;
  /** Days with such a reading, of any side. */
  readonly days: number;
}

/** The state that a metric is judged by, and all that there are. */
export interface MainCondition {
  readonly condition: Condition;
  /** The one that is judged by first. */
  readonly all: readonly ConditionDays[];
}

const conditions: readonly Condition[] = ['warm', 'cold', undefined];

/**
 * The state that a metric is judged by: the one with readings of the most days, of several the one measured last,
 * then warm before cold before unsaid. The same for both sides, so that they can be compared.
 */
export function mainCondition(readings: readonly Reading[]): MainCondition {
  const counted = conditions.flatMap((condition) => {
    const days = readings.filter((one) => one.condition === condition).map(({ day }) => day);
    if (days.length === 0) return [];
    return [{ condition, days: new Set(days).size, last: Math.max(...days) }];
  });
  counted.sort((one, other) => other.days - one.days || other.last - one.last);
  return {
    condition: counted[0]?.condition,
    all: counted.map(({ condition, days }) => ({ condition, days })),
  };
}
