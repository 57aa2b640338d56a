import { type NotEstimable, notEstimable } from './estimate';
import { mean } from './moments';
import type { Load } from './session-load';

/** This week's load beside the weeks before it. */
export interface LoadChange {
  readonly status: 'estimated';
  /** Weeks in the comparison. */
  readonly n: number;
  readonly previousMean: number;
  readonly difference: number;
  /** Difference as a percentage of the previous mean. */
  readonly percent: number;
}

/** How many weeks before this one it is compared with. */
export const WEEKS_COMPARED = 3;

/**
 * The change of a week's load against the mean of the three weeks before it: a plain description, preferred here to
 * any ratio of acute to chronic load.
 *
 * @param previous loads of the weeks before, the latest last; the last three are used
 */
export function loadChange(
  week: Load,
  previous: readonly Load[],
): LoadChange | NotEstimable<'too-few-weeks' | 'unknown-loads' | 'no-previous-load'> {
  const compared = previous.slice(-WEEKS_COMPARED);
  const known = compared.filter((load) => load !== undefined);
  const n = compared.length;
  if (n < WEEKS_COMPARED) {
    return notEstimable(n, 'too-few-weeks', [{ what: 'weeks', have: n, need: WEEKS_COMPARED }]);
  }
  if (week === undefined || known.length < n) {
    return notEstimable(n, 'unknown-loads', [
      { what: 'known-weeks', have: known.length + (week === undefined ? 0 : 1), need: n + 1 },
    ]);
  }
  const previousMean = mean(known) ?? 0;
  if (previousMean === 0) return notEstimable(n, 'no-previous-load');
  const difference = week - previousMean;
  return { status: 'estimated', n, previousMean, difference, percent: (100 * difference) / previousMean };
}
