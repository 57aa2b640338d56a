import type { Journal } from '../journal/journal';
import { dayNumber } from '../notation/time/iso-date';
import type { IsoWeek } from '../notation/time/iso-week';
import { painCaution } from '../training/cautions';
import type { Message } from '../training/finding';
import { checkContext } from '../training/week-under-check';
import { message } from '../training/wording';
import { journalWithSessions } from './journal-with-sessions';
import type { NoteChange } from './note-change';
import { changesFor, type PlannedSession, type PlanWeeksOptions, planWeeksSteps } from './plan-weeks';
import { gentleJournal } from './return-plan/gentle-journal';
import { type MovedForecast, movedForecasts } from './return-plan/moved-forecasts';
import {
  type ReturnLimits,
  type ReturnWeekLimit,
  returnLimits,
  type TrainingVolume,
} from './return-plan/return-limits';
import { finish, inSlices, type SliceOptions, type SliceProgress, type Steps } from './solver/slices';

export type { MovedForecast } from './return-plan/moved-forecasts';
export type { ReturnLimits, ReturnWeekLimit, TrainingVolume } from './return-plan/return-limits';

/** From this cut on, a week holds nothing hard: the first two of the four. No source. */
export const nothingHardFrom = 30;

/** Fewest and most weeks of a return. */
export const returnWeekCounts = [2, 3, 4] as const;

/** What the return is planned with. */
export interface ReturnPlanOptions
  extends Pick<PlanWeeksOptions, 'today' | 'zone' | 'comfortable' | 'timeOfDay' | 'nodeLimit'> {
  /** Weeks of the return; fewer where a part of it is behind. */
  readonly count: (typeof returnWeekCounts)[number];
}

/** A week of the return, ready to be shown. */
export interface ReturnWeek {
  readonly limit: ReturnWeekLimit;
  /** In order of day and time, recovery among them. */
  readonly placed: readonly PlannedSession[];
  /** What the week then holds, with what stood in it before. */
  readonly holds: TrainingVolume;
  /** What stood in the week is more than the step; nothing is taken away. */
  readonly stoodOver: boolean;
}

/** A return, ready to be shown and written. */
export interface ReturnPlan {
  readonly limits: ReturnLimits;
  readonly weeks: readonly ReturnWeek[];
  readonly forecasts: readonly MovedForecast[];
  /** To be shown with the plan. */
  readonly cautions: readonly Message[];
  readonly changes: readonly NoteChange[];
}

/** To be shown wherever a return is offered. */
export const returnCautions: readonly Message[] = [
  message(
    'The steps are borrowed from college football (Caterisano and others, 2019) and were not tested for flexibility or skill. They are upper limits: do less when less feels right.',
  ),
  message(
    'Training advice here is arithmetic on your own notes. It is not medical advice, and does not replace a qualified coach, physiotherapist or doctor. After an injury, an operation or an illness, ask a licensed health professional first.',
  ),
  message(painCaution),
];

/** Training that stands in a week; minutes as far as anything says. */
function standingVolume(journal: Journal, week: IsoWeek, options: ReturnPlanOptions): TrainingVolume {
  const training = checkContext(journal, options)
    .weeks(week)
    .standing.filter(({ isRecovery }) => !isRecovery);
  return {
    sessions: training.length,
    minutes: training.reduce((sum, { minutes }) => sum + (minutes ?? 0), 0),
  };
}

function isRecovery({ asked }: PlannedSession): boolean {
  return asked.facts.isRecovery;
}

function exceeds({ sessions, minutes }: TrainingVolume, limit: ReturnWeekLimit): boolean {
  if (sessions > limit.sessions) return true;
  // A single session stays whole: the exercises of a routine are not cut short for anybody.
  return limit.minutes !== undefined && minutes > limit.minutes && sessions > 1;
}

/** Plans one week within its step: as many sessions as it allows, one fewer as long as their minutes are too many. */
function* planWeek(journal: Journal, limit: ReturnWeekLimit, options: ReturnPlanOptions): Steps<ReturnWeek> {
  const { week } = limit;
  const { count: _, ...check } = options;
  const before = standingVolume(journal, week, options);
  for (let sessions = limit.sessions; ; sessions -= 1) {
    const smaller = gentleJournal(journal, week, {
      sessions: Math.max(0, sessions),
      allowsHard: limit.cutPercent < nothingHardFrom,
    });
    const { placed } = yield* planWeeksSteps(smaller, {
      ...check,
      weeks: [week],
      explain: false,
      // Minima of rules, but for recovery, are not for weeks of a return.
      only: ({ need, kinds }) => need !== undefined || kinds.includes('recovery'),
    });
    const training = placed.filter((session) => !isRecovery(session));
    const holds = {
      sessions: before.sessions + training.length,
      minutes: before.minutes + training.reduce((sum, { minutes }) => sum + minutes, 0),
    };
    if (training.length === 0 || !exceeds(holds, limit))
      return { limit, placed, holds, stoodOver: exceeds(before, limit) };
  }
}

/** The steps of {@link planReturn}. */
export function* planReturnSteps(
  journal: Journal,
  options: ReturnPlanOptions,
): Steps<ReturnPlan | undefined> {
  const context = checkContext(journal, options);
  const limits = returnLimits(context, options.count);
  if (!limits) return undefined;
  const weeks: ReturnWeek[] = [];
  let planned = journal;
  for (const limit of limits.weeks) {
    const week = yield* planWeek(planned, limit, options);
    weeks.push(week);
    planned = journalWithSessions(planned, {
      without: [],
      added: week.placed.map(({ asked, date, start }) => asked.make(dayNumber(date), start)),
    });
  }
  const placed = weeks.flatMap((week) => week.placed);
  return {
    limits,
    weeks,
    forecasts: movedForecasts(context, limits),
    cautions: returnCautions,
    changes: changesFor(journal, { ...options, weeks: limits.weeks.map(({ week }) => week) }, placed),
  };
}

/**
 * A return in steps, for two to four weeks from the coming one: after two weeks or more without a done session, or while
 * sessions slip. A week holds at most what the ramp of {@link returnRamp} allows of the fullest week before, in sessions
 * and in minutes, and one session at the least; what is not hard comes first, and the first two weeks of the ramp hold
 * nothing hard. Goals, targets and dates stay as they are. No rule is broken, and what stands in the weeks stays.
 * @returns `undefined` when there is nothing to return from.
 */
export function planReturn(journal: Journal, options: ReturnPlanOptions): ReturnPlan | undefined {
  return finish(planReturnSteps(journal, options));
}

/** The same in slices, between which others may work; `'stopped'` when it was stopped. */
export function* planReturnInSlices(
  journal: Journal,
  options: ReturnPlanOptions & SliceOptions,
): Generator<SliceProgress, ReturnPlan | undefined | 'stopped', void> {
  let isStopped = false;
  const plan = yield* inSlices(planReturnSteps(journal, options), {
    ...options,
    shouldStop: () => {
      isStopped = options.shouldStop?.() === true;
      return isStopped;
    },
  });
  return isStopped ? 'stopped' : plan;
}
