import type { Journal, JournalPlan, Need } from '../journal/journal';
import type { PerWeek } from '../notation/entries';
import type { IsoDate } from '../notation/time/iso-date';
import { addWeeks, type IsoWeek, isoWeekOf } from '../notation/time/iso-week';
import { kindsOf } from '../training/kinds';
import { openNeeds } from '../training/open-needs';
import { type WeekReader, weekReader } from '../training/training-week';
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

/** Weeks whose done sessions say what a week holds at present. No source. */
const recentWeeks = 4;

/** How many training sessions a smaller week asks for, and how many the needs of the week do. */
export interface SmallerWeekSize {
  readonly sessions: number;
  readonly asked: number;
}

/**
 * As many training sessions for `week` as were done in a week of late, one at the least and one fewer than asked at the
 * most; `undefined` where so little is asked that there is nothing to leave out.
 */
export function smallerWeekSize(
  journal: Journal,
  today: IsoDate,
  week: IsoWeek,
): SmallerWeekSize | undefined {
  const asked = trainingSessionsAsked(journal.plan, week);
  if (asked < 2) return undefined;
  const weeks = weekReader(journal, today);
  const current = isoWeekOf(today);
  const done = Array.from({ length: recentWeeks }, (_, ago) =>
    trainingDone(weeks, addWeeks(current, -ago - 1)),
  );
  const usual = Math.round(done.reduce((sum, one) => sum + one, 0) / recentWeeks);
  return { sessions: Math.max(1, Math.min(usual, asked - 1)), asked };
}

/** Training sessions done in a week, recovery left out. */
export function trainingDone(weeks: WeekReader, week: IsoWeek): number {
  return weeks(week).standing.filter(({ state, isRecovery }) => state === 'done' && !isRecovery).length;
}
