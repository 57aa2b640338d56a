import type { Journal } from '../journal/journal';
import { dayNumber, type IsoDate } from '../notation/time/iso-date';
import type { Finding } from '../training/finding';
import { checkContext } from '../training/week-under-check';
import { dateOfNote } from './day-note-path';
import { changeChecker, speaksAgainst } from './findings-added';
import type { NoteChange } from './note-change';
import { changesFor, type PlannedSession, type PlanWeeksOptions, type WeeksPlan } from './plan-weeks';

/** What a person keeps of a plan. */
export interface KeptOfPlan {
  readonly sessions: readonly PlannedSession[];
  /** Whether days without any session get a note that says so. */
  readonly restDays: boolean;
}

/** The days of a plan that hold no session, and whose notes would say so. */
export function restDaysOf(journal: Journal, options: PlanWeeksOptions, plan: WeeksPlan): readonly IsoDate[] {
  const context = checkContext(journal, { today: options.today, zone: options.zone });
  const taken = new Set<string>([
    ...plan.placed.map(({ date }) => date),
    ...plan.weeks.flatMap((week) => context.weeks(week).standing.map(({ session }) => session.date)),
  ]);
  return plan.changes
    .filter(({ kind, note }) => kind === 'create' && !taken.has(dateOfNote(note)))
    .map(({ note }) => dateOfNote(note) as IsoDate);
}

/**
 * The changes that write what a person keeps of a plan. A day whose sessions are all given up gets no note: it is not
 * known to be one of rest.
 */
export function changesKept(
  journal: Journal,
  options: PlanWeeksOptions,
  plan: WeeksPlan,
  kept: KeptOfPlan,
): readonly NoteChange[] {
  const rest = new Set<string>(restDaysOf(journal, options, plan));
  const given = new Set<string>(
    plan.placed.filter((session) => !kept.sessions.includes(session)).map(({ date }) => date),
  );
  for (const { date } of kept.sessions) given.delete(date);
  const context = checkContext(journal, { today: options.today, zone: options.zone });
  for (const week of plan.weeks)
    for (const { session } of context.weeks(week).standing) given.delete(session.date);
  return changesFor(journal, options, kept.sessions).filter(({ kind, note }) => {
    const date = dateOfNote(note);
    return kind === 'edit' || !(given.has(date) || (rest.has(date) && !kept.restDays));
  });
}

/** What the rules find against a part of a plan: the whole breaks none, a part of it may. */
export function againstKept(
  journal: Journal,
  options: PlanWeeksOptions,
  sessions: readonly PlannedSession[],
): readonly Finding[] {
  const check = changeChecker(journal, { today: options.today, zone: options.zone });
  return check({
    without: sessions.flatMap(({ from }) => from ?? []),
    added: sessions.map(({ asked, date, start }) => asked.make(dayNumber(date), start)),
  }).filter(speaksAgainst);
}
