import type { Journal } from '../journal/journal';
import { isoWeekOf } from '../notation/time/iso-week';
import { type CheckContext, checkContext } from '../training/week-under-check';
import type { NoteChange } from './note-change';
import { changesToFit } from './plan-weeks/changes-to-fit';
import { differencesTo } from './plan-weeks/differences';
import { conflictOf } from './plan-weeks/explain-weeks';
import { leftOutReason } from './plan-weeks/left-out-reason';
import { placedReason, whyPlaced } from './plan-weeks/placed-reason';
import {
  isImpossible,
  type SolvedSession,
  type SolvedWeeks,
  solveWeeks,
  sortOf,
  standsAlready,
} from './plan-weeks/solve-weeks';
import { weekNotes } from './plan-weeks/week-notes';
import type {
  LeftOutSession,
  PlannedSession,
  PlanWeeksOptions,
  WeeksPlan,
  WeeksPlanStatus,
} from './plan-weeks/weeks-plan';
import { finish, inSlices, type SliceOptions, type SliceProgress, type Steps } from './solver/slices';
import { daysToPlan } from './week-problem/build-problem';

export type {
  LeftOutSession,
  PlanConflict,
  PlannedSession,
  PlanRemedy,
  PlanWeeksOptions,
  WeeksPlan,
  WeeksPlanStatus,
} from './plan-weeks/weeks-plan';

/** Recovery that only a rule asks for is not wanted in a week that in the end holds no training. */
function wanted({ placed, context }: SolvedWeeks): readonly SolvedSession[] {
  return placed.filter(
    ({ asked }) =>
      asked.importance !== undefined || context.weeks(asked.week).standing.some((facts) => !facts.isRecovery),
  );
}

function plannedSession(solved: SolvedSession, all: SolvedWeeks): PlannedSession {
  const { asked, place, session } = solved;
  const { what, facts } = asked;
  const goal = what.is === 'new' ? what.demand.need?.goal : facts.goals[0];
  const why = whyPlaced(solved, {
    context: all.context,
    habits: all.habits,
    rules: all.first?.built.problem.rules ?? [],
  });
  return {
    date: session.date,
    ...(place.start === undefined ? {} : { start: place.start }),
    minutes: asked.minutes,
    kind: session.kind,
    ...(goal === undefined ? {} : { goal }),
    with: session.entry.with.map(({ value }) => value),
    ...(what.is === 'moving' ? { from: what.session } : {}),
    why,
    reason: placedReason(solved, why),
    asked,
  };
}

function compare(one: PlannedSession, other: PlannedSession): number {
  if (one.date !== other.date) return one.date < other.date ? -1 : 1;
  return (one.start ?? 1440) - (other.start ?? 1440);
}

function* leftOutSessions(solved: SolvedWeeks): Steps<readonly LeftOutSession[]> {
  const { unplaced, context } = solved;
  const found: LeftOutSession[] = [];
  for (const one of unplaced) {
    const { asked, count } = one;
    const need = asked.what.is === 'new' ? asked.what.demand.need : asked.facts.countsFor[0];
    const goal = need?.goal;
    const why = yield* leftOutReason(one, context);
    const leftOut: LeftOutSession = {
      week: asked.week,
      kind: asked.facts.session.kind,
      ...(goal === undefined ? {} : { goal }),
      ...(need ? { need } : {}),
      ...(asked.what.is === 'moving' ? { from: asked.what.session } : {}),
      why,
    };
    for (let copy = 0; copy < count; copy += 1) found.push({ ...leftOut });
  }
  return found;
}

function statusOf(solved: SolvedWeeks): WeeksPlanStatus {
  if (isImpossible(solved)) return 'impossible';
  return solved.isProven ? 'proven best' : 'best found';
}

function* explained(
  solved: SolvedWeeks,
  options: PlanWeeksOptions,
  context: CheckContext,
): Steps<Pick<WeeksPlan, 'conflict' | 'remedies'>> {
  const { first } = solved;
  const [missed] = solved.unplaced;
  if (!first || !missed || options.explain === false) return { remedies: [] };
  const { week } = missed.asked;
  const leftOut = new Set(
    first.built.asked
      .filter((one) => solved.unplaced.some(({ asked }) => sortOf(asked) === sortOf(one.asked)))
      .map(({ id }) => id),
  );
  const found = yield* conflictOf(first.built, week, options.weeks, leftOut, context);
  if (!found) return { remedies: [] };
  const remedies = yield* changesToFit(found, first.built, context);
  return { conflict: found.described, remedies };
}

/**
 * The changes that write some of a plan's sessions, such as those that a person kept of it. With none of them, nothing
 * is written.
 */
export function changesFor(
  journal: Journal,
  options: PlanWeeksOptions,
  sessions: readonly PlannedSession[],
): readonly NoteChange[] {
  const context = checkContext(journal, { today: options.today, zone: options.zone });
  const standing = options.weeks.flatMap((week) => context.weeks(week).standing);
  if (options.mode === 'rearrange') return weekNotes(journal, [], sessions, standing);
  if (sessions.length === 0 && standing.length === 0) return [];
  const days = options.weeks.flatMap((week) => daysToPlan(context, week));
  return weekNotes(journal, days, sessions, standing);
}

/** The steps of {@link planWeeks}. */
export function* planWeeksSteps(journal: Journal, options: PlanWeeksOptions): Steps<WeeksPlan> {
  const solved = yield* solveWeeks(journal, options);
  const original = checkContext(journal, { today: options.today, zone: options.zone });
  yield 0;
  const placed = wanted(solved)
    .filter(({ asked, session }) => !standsAlready(asked, session))
    .map((one) => plannedSession(one, solved))
    .sort(compare);
  yield 0;
  const leftOut = yield* leftOutSessions(solved);
  yield 0;
  const changes = changesFor(journal, options, placed);
  yield 0;
  const [firstWeek] = options.weeks;
  return {
    weeks: options.weeks,
    status: statusOf(solved),
    isProven: solved.isProven,
    placed,
    leftOut,
    differences: firstWeek === undefined ? [] : differencesTo(solved.context, firstWeek),
    ...(yield* explained(solved, options, original)),
    changes,
  };
}

/**
 * Lays into weeks what the needs of open goals, the needs of every week and the minima of rules ask for, so that no rule
 * is broken: the best legal plan, in the order that `solver/order.ts` gives. What does not fit is left out, with the
 * reason. The plan passes the solver's own judge and the training layer's check. Planning again after the changes of a
 * proven plan are made changes nothing.
 */
export function planWeeks(journal: Journal, options: PlanWeeksOptions): WeeksPlan {
  return finish(planWeeksSteps(journal, options));
}

/** The same in slices, between which others may work; `undefined` when it was stopped. */
export function planWeeksInSlices(
  journal: Journal,
  options: PlanWeeksOptions & SliceOptions,
): Generator<SliceProgress, WeeksPlan | undefined, void> {
  return inSlices(planWeeksSteps(journal, options), options);
}

/**
 * Arranges the rest of the running week anew: what was missed is placed again, what is agreed with somebody stays, and
 * as few sessions as can be change their place.
 */
export function rearrangeWeek(
  journal: Journal,
  options: Omit<PlanWeeksOptions, 'weeks' | 'mode'>,
): WeeksPlan {
  return planWeeks(journal, { ...options, mode: 'rearrange', weeks: [isoWeekOf(options.today)] });
}
