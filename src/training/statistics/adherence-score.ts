import { type NotEstimable, notEstimable } from './estimate';
import { solve } from './linear-algebra';
import { type Proportion, wilson } from './proportion';

/** The running score of done and missed sessions. */
export interface AdherenceScore {
  readonly n: number;
  /** After each session: done takes one away, missed adds two, never below zero. */
  readonly scores: readonly number[];
  /** Positions (from 0) whose score is at or above the limit. */
  readonly alarms: readonly number[];
}

/** A base rate of done sessions that is known well enough to notice a drop from it. */
export interface AdherenceBaseline extends Proportion {
  readonly status: 'estimated';
}

const DONE = -1;
const MISSED = 2;

/** At this score a drop is reported; with 80 % done that happens by chance once in 91 sessions. */
export const DROP_LIMIT = 6;

/** Sessions needed before the athlete's own base rate is used. */
export const FEWEST_BASELINE_SESSIONS = 20;

/**
 * The score that notices a drop: done -1, missed +2, floor 0. It is the whole-number twin of the log-likelihood sum
 * for a fall from 80 % to 50 % done, whose weights stand as 1 to 1.95.
 *
 * @param done planned sessions in order, true when done; excused and cancelled ones left out
 */
export function adherenceScore(done: readonly boolean[], limit = DROP_LIMIT): AdherenceScore {
  const scores: number[] = [];
  for (const session of done) scores.push(Math.max(0, (scores.at(-1) ?? 0) + (session ? DONE : MISSED)));
  return { n: done.length, scores, alarms: scores.flatMap((score, i) => (score >= limit ? [i] : [])) };
}

/**
 * The mean number of sessions from a score of zero to the first alarm, when each is done with the given chance: the
 * exact solution of the score's Markov chain. At the usual chance it says how often a false alarm comes.
 * Method: Brook & Evans (1972) Biometrika 59:539-549.
 *
 * @param chanceDone 0..1; at 1 the alarm never comes and the answer is infinite
 */
export function sessionsToAlarm(chanceDone: number, limit = DROP_LIMIT): number {
  if (!(chanceDone >= 0 && chanceDone <= 1)) throw new RangeError(`${chanceDone} is not a chance`);
  if (!Number.isInteger(limit) || limit < 1) throw new RangeError('The limit is a whole number above zero');
  if (chanceDone === 1) return Number.POSITIVE_INFINITY;
  // One row a score below the limit: expected(score) = 1 + sum of chance x expected(next score).
  const rows = Array.from({ length: limit }, (_, score) => {
    const row = Array.from({ length: limit }, (_, other): number => (other === score ? 1 : 0));
    const afterDone = Math.max(0, score + DONE);
    row[afterDone] = (row[afterDone] ?? 0) - chanceDone;
    const afterMissed = score + MISSED;
    if (afterMissed < limit) row[afterMissed] = (row[afterMissed] ?? 0) - (1 - chanceDone);
    return row;
  });
  return solve(rows, new Array<number>(limit).fill(1))?.[0] ?? Number.POSITIVE_INFINITY;
}

/** The athlete's own share of done sessions, once there are enough of them. */
export function adherenceBaseline(
  done: readonly boolean[],
  confidence = 0.95,
): AdherenceBaseline | NotEstimable<'too-few-sessions'> {
  const n = done.length;
  const share = wilson(done.filter(Boolean).length, n, confidence);
  return n < FEWEST_BASELINE_SESSIONS || share === undefined
    ? notEstimable(n, 'too-few-sessions', [{ what: 'sessions', have: n, need: FEWEST_BASELINE_SESSIONS }])
    : { status: 'estimated', ...share };
}
