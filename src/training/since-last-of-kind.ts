import { type Gap, gapBetween } from './gap';
import type { SessionFacts } from './session-facts';
import { sessionTimes } from './session-times';
import { standingBetween, type WeekReader } from './training-week';

/** How far back the last session of the same kind is looked for, in days. */
export const daysLookedBack = 56;

/** The last standing session before another, and the time from its end to the start of that one. */
export interface SinceLast {
  readonly last: SessionFacts;
  readonly gap: Gap;
}

/**
 * The last standing session before `facts` that is of its kind, or of a kind that is like it, and how long ago it
 * ended.
 * @param zone tzdb name of the zone in which hours are counted
 * @returns `undefined` when there is none in the {@link daysLookedBack} days before
 */
export function sinceLastOfKind(facts: SessionFacts, weeks: WeekReader, zone: string): SinceLast | undefined {
  const { day, kind } = facts.session;
  const standing = standingBetween(weeks, day - daysLookedBack, day);
  const own = standing.findIndex((one) => one.session === facts.session);
  const before = own < 0 ? standing : standing.slice(0, own);
  const isAlike = (one: SessionFacts) => one.kinds.includes(kind) || facts.kinds.includes(one.session.kind);
  let index = before.length - 1;
  for (let one = before[index]; one && !isAlike(one); one = before[index]) index -= 1;
  const last = before[index];
  if (!last) return undefined;
  const gap = gapBetween(
    { facts: last, times: sessionTimes(last, zone) },
    { facts, times: sessionTimes(facts, zone) },
    { minutes: 1440, unit: 'h' },
  );
  return { last, gap };
}
