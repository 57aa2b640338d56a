import { type NotEstimable, notEstimable } from '../statistics/estimate';
import { type Proportion, wilson } from '../statistics/proportion';
import type { PlannedSession } from './planned-sessions';

/** A reason for which sessions were skipped, and how many. */
export interface ReasonCount {
  readonly reason: string;
  readonly count: number;
}

/** How many of some planned sessions were done. */
export interface AdherenceShare {
  /** Planned sessions that count: done, missed and unmarked ones. */
  readonly n: number;
  readonly done: number;
  readonly missed: number;
  /** Past ones of which nothing says what became of them; among those not done. */
  readonly unmarked: number;
  /** Left out of `n`. */
  readonly excused: number;
  /** Done of `n` with Wilson's interval at 95 %. Planned sessions are not independent, so the truth is less sure. */
  readonly share: Proportion | NotEstimable<'no-planned-sessions'>;
  /** Every reason written, excused ones too; most frequent first, then by name. */
  readonly reasons: readonly ReasonCount[];
}

function countReasons(sessions: readonly PlannedSession[]): readonly ReasonCount[] {
  const counts = new Map<string, number>();
  for (const { reason } of sessions) {
    if (reason !== undefined) counts.set(reason, (counts.get(reason) ?? 0) + 1);
  }
  return [...counts]
    .map(([reason, count]) => ({ reason, count }))
    .sort((one, other) => other.count - one.count || (one.reason < other.reason ? -1 : 1));
}

/** Done of planned among `sessions`, excused ones apart. */
export function adherenceShare(sessions: readonly PlannedSession[]): AdherenceShare {
  const count = (outcome: PlannedSession['outcome']): number =>
    sessions.filter((one) => one.outcome === outcome).length;
  const [done, missed, unmarked, excused] = [
    count('done'),
    count('missed'),
    count('unmarked'),
    count('excused'),
  ];
  const n = done + missed + unmarked;
  return {
    n,
    done,
    missed,
    unmarked,
    excused,
    share:
      wilson(done, n) ?? notEstimable(0, 'no-planned-sessions', [{ what: 'sessions', have: 0, need: 1 }]),
    reasons: countReasons(sessions),
  };
}
