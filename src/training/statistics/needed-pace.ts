import type { Interval } from './estimate';
import type { GoalDirection } from './forecast';

/**
 * The pace, in units of `y` for one unit of `x`, that leads from a reading to the target by its date. `undefined`
 * when no time is left.
 */
export function neededPace(
  now: { readonly x: number; readonly y: number },
  target: number,
  by: number,
): number | undefined {
  return by > now.x ? (target - now.y) / (by - now.x) : undefined;
}

/** How a needed pace stands to the observed one. */
export type PaceVerdict =
  /** More than the fast end of the observed pace. */
  | 'faster-than-observed'
  /** Inside the interval of the observed pace. */
  | 'within-observed'
  /** Less than the slow end: the observed pace arrives early. */
  | 'slower-than-observed';

/** Compares the pace a goal needs with the interval of the observed pace. */
export function comparePace(needed: number, observed: Interval, direction: GoalDirection): PaceVerdict {
  if (needed >= observed.lower && needed <= observed.upper) return 'within-observed';
  const needsMoreUpwards = needed > observed.upper;
  return needsMoreUpwards === (direction === 'rising') ? 'faster-than-observed' : 'slower-than-observed';
}
