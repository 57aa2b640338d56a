/**
 * What a state carries from the past, each a number of which less is never worse. See `state-store.ts`.
 */
import type { PreparedProblem } from './tables';

/** Where each burden lies in a state. */
export interface BurdenLayout {
  /** For each signature from index 0: the index of its first start that no gap closes any more. */
  readonly signatures: number;
  /** From `air`, for each air rule: the end of the last session of its earlier class, or `LONG_AGO`. */
  readonly air: number;
  readonly airs: number;
  /**
   * From `rowDue`, for each row rule: 1 when a session of the class today would make a row with yesterday
   * that is not counted yet. From `today`: 1 when today holds one.
   */
  readonly rowDue: number;
  readonly today: number;
  readonly rows: number;
  /**
   * From `trained`, for each rest rule: training days of the week so far. From `trainedWithMore`: how many
   * they would be with one more session today. (Whether today is a training day is no burden by itself:
   * a day that is one already has room for more.)
   */
  readonly trained: number;
  readonly trainedWithMore: number;
  readonly rests: number;
  /** From `used`, for each cap rule: minutes of the day, standing sessions of later hours included. */
  readonly used: number;
  readonly caps: number;
  readonly length: number;
}

/** The last end for an air rule when nothing is near enough to matter. */
export const LONG_AGO = -(2 ** 31);

/** Lays out the burdens of a problem. */
export function layOutBurdens(prepared: PreparedProblem): BurdenLayout {
  const signatures = prepared.starts.length;
  const airs = prepared.airs.length;
  const rows = prepared.rows.length;
  const rests = prepared.rests.length;
  const caps = prepared.caps.length;
  const air = signatures;
  const rowDue = air + airs;
  const today = rowDue + rows;
  const trained = today + rows;
  const trainedWithMore = trained + rests;
  const used = trainedWithMore + rests;
  const length = used + caps;
  return { signatures, air, airs, rowDue, today, rows, trained, trainedWithMore, rests, used, caps, length };
}
