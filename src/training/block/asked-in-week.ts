import type { JournalPlan, Need } from '../../journal/journal';
import type { PerWeek, Rating, WrittenVolume } from '../../notation/entries';
import type { IsoWeek } from '../../notation/time/iso-week';
import type { LengthOfTime } from '../../notation/time/length-of-time';
import { openNeeds } from '../open-needs';
import { gentleEffort, hardEffort } from '../session-facts';
import { blockRowOf, roleOf } from './block-rows';

/** What a need asks of one week. */
export interface AskedOfWeek {
  readonly perWeek: PerWeek;
  /** How long a session lasts. */
  readonly length?: LengthOfTime;
  readonly rating?: Rating;
}

/** Minutes of a session when nothing at all says how long it lasts: an assumption, no published value. */
export const assumedMinutes = { training: 60, recovery: 45 } as const;

/** How long a session of a need lasts, assumed when nothing says. */
export function needMinutes(need: Need, plan: JournalPlan): number {
  const routine = need.routine === undefined ? undefined : plan.routines.get(need.routine);
  return need.length?.minutes ?? routine?.length?.minutes ?? assumedMinutes.training;
}

/** How many sessions a need asks of a week by itself. */
export function needSessions(need: Need, plan: JournalPlan): number {
  const { count, minutes } = need.perWeek;
  return count ?? Math.ceil(minutes / needMinutes(need, plan));
}

/**
 * Gives sessions out among needs of one kind: one to each in turn, up to what it asks; what is left goes to the first.
 * @param needs Needs of the nearest goal first.
 */
function givenOut(needs: readonly Need[], sessions: number, plan: JournalPlan): ReadonlyMap<Need, number> {
  const given = new Map<Need, number>(needs.map((need) => [need, 0]));
  let left = sessions;
  for (let gave = true; gave && left > 0; ) {
    gave = false;
    for (const need of needs) {
      const has = given.get(need) ?? 0;
      if (left === 0 || has >= needSessions(need, plan)) continue;
      given.set(need, has + 1);
      left -= 1;
      gave = true;
    }
  }
  const [first] = needs;
  if (first && left > 0) given.set(first, (given.get(first) ?? 0) + left);
  return given;
}

function shareOf(need: Need, needs: readonly Need[], volume: WrittenVolume, plan: JournalPlan) {
  const asked = needs.reduce((sum, one) => sum + needSessions(one, plan), 0);
  const given = givenOut(needs, volume.sessions ?? asked, plan);
  const usual = [...given].reduce((sum, [one, count]) => sum + count * needMinutes(one, plan), 0);
  const count = given.get(need) ?? 0;
  // Rounded down, so that a week never holds more than its cell says.
  const minutes = usual === 0 ? 0 : Math.floor((volume.minutes * needMinutes(need, plan)) / usual + 1e-9);
  return count === 0 || minutes === 0 ? { count: 0 } : { count, minutes };
}

/**
 * What a need asks of `week`: what its line says, or, in a week of a block whose table has a column of its kind, its
 * share of what the cell says. Sessions are given to needs of one kind in turn, the nearest goal first, and the minutes
 * in the proportion of the lengths that the needs ask for. In a lighter week nothing is asked hard: the survey of
 * {@link LIGHTER_WEEK_SURVEY} found that volume and effort are cut and the frequency stays.
 */
export function askedOfWeek(plan: JournalPlan, need: Need, week: IsoWeek): AskedOfWeek {
  const row = plan.blocks.length === 0 ? undefined : blockRowOf(plan, week);
  const volume = row?.volumes.find(({ kind }) => kind === need.kind);
  if (!row || !volume) return need;
  const needs = openNeeds(plan, week).filter(({ kind }) => kind === need.kind);
  if (!needs.includes(need)) return need;
  const { count, minutes } = shareOf(need, needs, volume, plan);
  const rating = roleOf(row) === 'lighter' ? Math.min(gentleEffort, need.rating ?? hardEffort) : need.rating;
  return {
    perWeek: { count },
    ...(minutes === undefined ? {} : { length: { minutes, unit: 'min' } }),
    ...(rating === undefined ? {} : { rating }),
  };
}
