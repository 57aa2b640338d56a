import { mean } from './moments';
import type { Point } from './point';

/** The readings that share one `x`, as one point. */
export interface CollapsedPoint extends Point {
  /** How many readings the mean `y` stands on. */
  readonly readings: number;
}

/**
 * Puts the mean of all readings of one `x` in their place, in order of `x`. Repeats of a day are not independent
 * evidence of a trend: without this, reading the tape three times would narrow the slope's interval.
 */
export function collapseRepeats(points: readonly Point[]): readonly CollapsedPoint[] {
  const groups = new Map<number, number[]>();
  for (const { x, y } of points) groups.set(x, [...(groups.get(x) ?? []), y]);
  return [...groups]
    .sort(([a], [b]) => a - b)
    .map(([x, values]) => ({ x, y: mean([...values].sort((a, b) => a - b)) ?? 0, readings: values.length }));
}
