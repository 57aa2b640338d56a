import { type IsoDate, isoDate } from '../../notation/time/iso-date';
import {
  type AdherenceBaseline,
  adherenceBaseline,
  adherenceScore,
  DROP_LIMIT,
  sessionsToAlarm,
} from '../statistics/adherence-score';
import { type NotEstimable, notEstimable } from '../statistics/estimate';
import { BREAK_DAYS } from '../statistics/return-ramp';
import { type AdherenceShare, adherenceShare } from './adherence-share';
import type { PlannedSession } from './planned-sessions';

/** Whether fewer planned sessions are done than the athlete usually does. */
export interface Slide {
  readonly status: 'estimated';
  /** Sessions that the score has counted, since the last break. */
  readonly n: number;
  readonly isSliding: boolean;
  /** Done -1, missed +2, floor 0, after the last session. */
  readonly score: number;
  readonly limit: number;
  /** Share of sessions done before the score last left zero. */
  readonly usual: AdherenceBaseline;
  /** Sessions since then, excused ones counted apart; the first of them was missed. */
  readonly recent: AdherenceShare;
  readonly since: IsoDate | undefined;
  /** At the usual share, a false alarm comes by chance about once in so many sessions. */
  readonly sessionsToFalseAlarm: number;
}

export type SlideReason =
  | 'too-few-sessions'
  /** At the usual share, no limit keeps false alarms rare. */
  | 'usual-share-too-low';

/** A false alarm at most once in so many sessions: about one a quarter at five a week. No source. */
export const LEAST_SESSIONS_TO_FALSE_ALARM = 60;
const highestLimit = 20;

/** The limit for a usual share: 6, or higher where that would raise false alarms too often. */
export function dropLimit(usualShare: number): number | undefined {
  for (let limit = DROP_LIMIT; limit <= highestLimit; limit += 1) {
    if (sessionsToAlarm(usualShare, limit) >= LEAST_SESSIONS_TO_FALSE_ALARM) return limit;
  }
  return undefined;
}

/** Position behind the last break of two weeks or more without a counted session. */
function afterLastBreak(counted: readonly PlannedSession[]): number {
  for (let index = counted.length - 1; index > 0; index -= 1) {
    const [before, after] = [counted[index - 1], counted[index]];
    if (before && after && after.day - before.day >= BREAK_DAYS) return index;
  }
  return 0;
}

/**
 * Whether a drop shows: the score of the sessions since the last break (of two weeks or more without a session that
 * counts) stands at its limit or above. The usual share is that of the sessions before the score last left zero, so
 * that the drop itself does not hide in it; it takes twenty of them. The limit is 6, and higher for a usual share so
 * low that 6 would come by chance more often than once in 60 sessions.
 *
 * @param sessions past planned sessions in order of time
 */
export function slide(sessions: readonly PlannedSession[]): Slide | NotEstimable<SlideReason> {
  const counted = sessions.filter(({ outcome }) => outcome !== 'excused');
  const begin = afterLastBreak(counted);
  const isDone = ({ outcome }: PlannedSession): boolean => outcome === 'done';
  const { scores, n } = adherenceScore(counted.slice(begin).map(isDone));
  const lastZero = scores.lastIndexOf(0);
  const start = begin + lastZero + 1;
  const usual = adherenceBaseline(counted.slice(0, start).map(isDone));
  if (usual.status === 'not-estimable') return usual;
  const limit = dropLimit(usual.proportion);
  if (limit === undefined) return notEstimable(usual.n, 'usual-share-too-low');
  const first = counted[start];
  const score = scores.at(-1) ?? 0;
  return {
    status: 'estimated',
    n,
    isSliding: score >= limit,
    score,
    limit,
    usual,
    recent: adherenceShare(first ? sessions.slice(sessions.indexOf(first)) : []),
    since: first ? isoDate(first.day) : undefined,
    sessionsToFalseAlarm: sessionsToAlarm(usual.proportion, limit),
  };
}
