import { type DayNumber, type IsoDate, isoDate } from '../../notation/time/iso-date';
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
  /** Share of sessions done before the score last left zero; of all where those are too few. */
  readonly usual: AdherenceBaseline;
  /** Sessions since then, excused ones counted apart; the first of them was missed. */
  readonly recent: AdherenceShare;
  readonly since?: IsoDate;
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
/** Days in which a session can still be ticked late. No source. */
export const DAYS_TO_MARK = 7;

/** The limit for a usual share: 6, or higher where that would raise false alarms too often. */
export function dropLimit(usualShare: number): number | undefined {
  for (let limit = DROP_LIMIT; limit <= highestLimit; limit += 1) {
    if (sessionsToAlarm(usualShare, limit) >= LEAST_SESSIONS_TO_FALSE_ALARM) return limit;
  }
  return undefined;
}

/** The share that false alarms are worked out from: half a session of either kind is added, so that nobody is perfect. */
function cautious(done: number, n: number): number {
  return (done + 0.5) / (n + 1);
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
 * that the drop itself does not hide in it; where these are fewer than the twenty it takes, all are taken, which makes
 * a drop harder to see. The limit is 6, and higher for a usual share so low that 6 would come by chance more often than
 * once in 60 sessions. Sessions of the last week of which nothing says what became of them are not counted yet.
 *
 * @param sessions past planned sessions in order of time
 */
export function slide(
  sessions: readonly PlannedSession[],
  today: DayNumber,
): Slide | NotEstimable<SlideReason> {
  const settled = sessions.filter(({ outcome, day }) => outcome !== 'unmarked' || day < today - DAYS_TO_MARK);
  const counted = settled.filter(({ outcome }) => outcome !== 'excused');
  const begin = afterLastBreak(counted);
  const isDone = ({ outcome }: PlannedSession): boolean => outcome === 'done';
  const { scores, n } = adherenceScore(counted.slice(begin).map(isDone));
  const start = begin + scores.lastIndexOf(0) + 1;
  const before = adherenceBaseline(counted.slice(0, start).map(isDone));
  const usual = before.status === 'estimated' ? before : adherenceBaseline(counted.map(isDone));
  if (usual.status === 'not-estimable') return usual;
  const chance = cautious(usual.successes, usual.n);
  const limit = dropLimit(chance);
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
    recent: adherenceShare(first ? settled.slice(settled.indexOf(first)) : []),
    ...(first ? { since: isoDate(first.day) } : {}),
    sessionsToFalseAlarm: sessionsToAlarm(chance, limit),
  };
}
