import type { Journal, JournalPlan, Need } from '../journal/journal';
import type { PerWeek } from '../notation/entries';
import type { IsoWeek } from '../notation/time/iso-week';
import { kindsOf } from '../training/kinds';
import { openNeeds } from '../training/open-needs';
import { journalWithNeeds } from './journal-with-needs';

/** How many sessions a need asks for, when it says so. */
function countOf(need: Need, plan: JournalPlan): number {
  const { count, minutes } = need.perWeek;
  if (count !== undefined) return count;
  const length = need.length?.minutes ?? plan.routines.get(need.routine ?? '')?.length?.minutes ?? minutes;
  return Math.ceil(minutes / length);
}

/** What a need asks when it is left `sessions` of its sessions. */
function shrunk(need: Need, sessions: number, of: number): PerWeek {
  const { count, minutes } = need.perWeek;
  return count !== undefined ? { count: sessions } : { minutes: (minutes * sessions) / of };
}

/** How many training sessions the needs of `week` ask for, recovery left out. */
export function trainingSessionsAsked(plan: JournalPlan, week: IsoWeek): number {
  return openNeeds(plan, week)
    .filter((need) => !kindsOf(need.kind, plan.kinds).includes('recovery'))
    .reduce((sum, need) => sum + countOf(need, plan), 0);
}

/**
 * The journal as if the needs of `week` asked for at most `sessions` training sessions. They are given out in rounds,
 * one to each need, needs of the nearest goal first, so that a small week still holds something of everything;
 * recovery is asked for as before. Notes, rules and hours stay as they are.
 */
export function journalWithSmallerWeek(journal: Journal, week: IsoWeek, sessions: number): Journal {
  const { plan } = journal;
  const training = openNeeds(plan, week).filter(
    (need) => !kindsOf(need.kind, plan.kinds).includes('recovery'),
  );
  const given = new Map<Need, number>(training.map((need) => [need, 0]));
  let left = sessions;
  for (let gave = true; gave && left > 0; ) {
    gave = false;
    for (const need of training) {
      const has = given.get(need) ?? 0;
      if (left === 0 || has >= countOf(need, plan)) continue;
      given.set(need, has + 1);
      left -= 1;
      gave = true;
    }
  }
  return journalWithNeeds(journal, (needs) =>
    needs.flatMap((need) => {
      const has = given.get(need);
      if (has === undefined) return [need];
      return has === 0 ? [] : [{ ...need, perWeek: shrunk(need, has, countOf(need, plan)) }];
    }),
  );
}
