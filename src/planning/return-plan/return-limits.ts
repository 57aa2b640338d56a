import { dayNumber, type IsoDate } from '../../notation/time/iso-date';
import { addWeeks, type IsoWeek, isoWeekOf, isoWeekOfDay, mondayOf } from '../../notation/time/iso-week';
import { plannedSessions } from '../../training/adherence/planned-sessions';
import { slide } from '../../training/adherence/slide';
import { latestBreak, type TrainingBreak } from '../../training/adherence/training-break';
import { recentPlannedSessions } from '../../training/history-rules/slipping';
import { RETURN_CUTS, returnRamp } from '../../training/statistics/return-ramp';
import type { CheckContext } from '../../training/week-under-check';

/** Weeks in which the fullest one before the break is looked for. No source. */
const usualWeeks = 26;

/** What a week holds of training, recovery left out. */
export interface TrainingVolume {
  readonly sessions: number;
  /** As far as the notes say how long; 0 where they never do. */
  readonly minutes: number;
}

/** The most that a week of the return holds. */
export interface ReturnWeekLimit {
  readonly week: IsoWeek;
  readonly cutPercent: number;
  /** One at the least: a week without any would be no return. */
  readonly sessions: number;
  /** `undefined` where the notes before the break do not say how long sessions were. */
  readonly minutes?: number;
}

/** Why there is a return, and how much its weeks may hold. */
export interface ReturnLimits {
  readonly because: 'break' | 'slipping';
  readonly break?: TrainingBreak;
  /** The last day of training before it, of which the weeks before are taken for usual. */
  readonly lastDone: IsoDate;
  /** The fullest of the weeks before. */
  readonly usual: TrainingVolume;
  readonly weeks: readonly ReturnWeekLimit[];
}

function doneIn({ weeks }: CheckContext, week: IsoWeek): TrainingVolume {
  const done = weeks(week).standing.filter(({ state, isRecovery }) => state === 'done' && !isRecovery);
  return {
    sessions: done.length,
    minutes: done.reduce((sum, { minutes }) => sum + (minutes ?? 0), 0),
  };
}

/** Most sessions and most minutes of a week before `week`, each on its own. */
function fullest(context: CheckContext, week: IsoWeek): TrainingVolume {
  const volumes = Array.from({ length: usualWeeks }, (_, ago) => doneIn(context, addWeeks(week, -ago - 1)));
  return {
    sessions: Math.max(0, ...volumes.map(({ sessions }) => sessions)),
    minutes: Math.max(0, ...volumes.map(({ minutes }) => minutes)),
  };
}

/** A break that is not over, or that ended so lately that the weeks of its return go on. */
function openBreak(context: CheckContext): TrainingBreak | undefined {
  const { todayNumber, journal } = context;
  const monday = mondayOf(isoWeekOf(context.today)) - 7 * usualWeeks;
  const first = Math.max(monday, journal.span()?.first ?? todayNumber);
  const found = latestBreak(plannedSessions(context.weeks, first, todayNumber), todayNumber);
  if (found?.backOn === undefined) return found;
  return todayNumber - dayNumber(found.backOn) < 7 * RETURN_CUTS.length ? found : undefined;
}

/**
 * How much the coming `count` weeks may hold after two weeks or more without a done session, or while sessions slip:
 * the fullest week before, cut by the percentages of {@link returnRamp}, sessions and minutes alike. A return that has
 * begun goes on with the week that it has come to. `undefined` when there is nothing to return from, nothing to measure
 * by, or the return is over.
 * @param next The first of the weeks.
 */
export function returnLimits(
  context: CheckContext,
  count: number,
  next: IsoWeek = addWeeks(isoWeekOf(context.today), 1),
): ReturnLimits | undefined {
  const { todayNumber } = context;
  const found = openBreak(context);
  const sessions = recentPlannedSessions(context);
  if (!found) {
    const sliding = slide(sessions, todayNumber);
    if (sliding.status === 'not-estimable' || !sliding.isSliding) return undefined;
  }
  const lastDone =
    found?.lastDone ?? sessions.filter(({ outcome }) => outcome === 'done').at(-1)?.facts.session.date;
  if (lastDone === undefined) return undefined;
  const usual = fullest(context, found ? isoWeekOfDay(dayNumber(lastDone) + 7) : next);
  if (usual.sessions === 0) return undefined;
  const begun = found?.backOn === undefined ? 0 : (mondayOf(next) - mondayOf(isoWeekOf(found.backOn))) / 7;
  const bySessions = returnRamp(usual.sessions).weeks;
  const byMinutes = returnRamp(usual.minutes).weeks;
  const weeks = Array.from({ length: count }, (_, index) => index).flatMap((index): ReturnWeekLimit[] => {
    const step = bySessions[begun + index];
    if (!step || step.cutPercent === 0) return [];
    const minutes = byMinutes[begun + index]?.limit ?? 0;
    return [
      {
        week: addWeeks(next, index),
        cutPercent: step.cutPercent,
        sessions: Math.max(1, Math.floor(step.limit)),
        ...(minutes === 0 ? {} : { minutes }),
      },
    ];
  });
  if (weeks.length === 0) return undefined;
  return {
    because: found ? 'break' : 'slipping',
    ...(found ? { break: found } : {}),
    lastDone,
    usual,
    weeks,
  };
}
