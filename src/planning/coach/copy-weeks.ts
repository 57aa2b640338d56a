import type { Journal, Need } from '../../journal/journal';
import { journalAsIf } from '../../journal/journal-as-if';
import { dayNumber } from '../../notation/time/iso-date';
import { addWeeks, type IsoWeek, weeksInRow } from '../../notation/time/iso-week';
import { dateOfNote } from '../day-note-path';
import { DraftJournal } from '../draft-journal';
import { journalWithNeeds } from '../journal-with-needs';
import { journalWithSessions } from '../journal-with-sessions';
import type { NoteChange } from '../note-change';
import {
  changesFor,
  type LeftOutSession,
  type PlannedSession,
  type PlanWeeksOptions,
  planWeeksSteps,
} from '../plan-weeks';
import { finish, inSlices, type SliceOptions, type SliceProgress, type Steps } from '../solver/slices';
import { copiedNeeds } from './copied-needs';
import { addPlanLine } from './plan-lines';

/** Weeks that are copied at once at the most. */
export const mostCopiedWeeks = 12;

/** Whose weeks are copied, and where to. */
export interface CopyWeeksOptions
  extends Pick<PlanWeeksOptions, 'today' | 'zone' | 'comfortable' | 'timeOfDay' | 'nodeLimit'> {
  readonly from: Journal;
  readonly firstWeek: IsoWeek;
  readonly count: number;
  /** The first week of the receiving journal. */
  readonly to: IsoWeek;
}

/** A week that was copied, ready to be shown. */
export interface CopiedWeek {
  readonly from: IsoWeek;
  readonly week: IsoWeek;
  /** Sessions of the other athlete's week. */
  readonly sessions: number;
  /** In order of day and time. What stands in the week and is alike counts as copied and is not doubled. */
  readonly placed: readonly PlannedSession[];
  /** What no rule-keeping place was found for, and why. */
  readonly leftOut: readonly LeftOutSession[];
}

/** Copied weeks, ready to be shown and written. */
export interface CopyPlan {
  readonly weeks: readonly CopiedWeek[];
  /** Routines that come along, because their name is new in the receiving journal. */
  readonly routines: readonly string[];
  /** Routines whose name stands there with other exercises; those are written into the notes. */
  readonly routinesTaken: readonly string[];
  /** All of it. */
  readonly changes: readonly NoteChange[];
}

/** The journal as if it asked for nothing but `needs`, every week. */
function askedFor(journal: Journal, needs: readonly Need[]): Journal {
  const { plan } = journalWithNeeds(journal, () => []);
  return journalAsIf(journal, { plan: { ...plan, needs } });
}

/** Takes the routines of sessions into the receiving journal, as far as their names are new there. */
function takeRoutines(
  draft: DraftJournal,
  from: Journal,
  ids: Iterable<string>,
): Pick<CopyPlan, 'routines' | 'routinesTaken'> {
  const routines: string[] = [];
  const routinesTaken: string[] = [];
  for (const id of new Set(ids)) {
    const routine = from.plan.routines.get(id);
    if (!routine) continue;
    const { state, changes } = addPlanLine(draft.journal, { is: 'routine', from, routine });
    draft.write(changes);
    if (state === 'added') routines.push(id);
    if (state === 'taken') routinesTaken.push(id);
  }
  return { routines, routinesTaken };
}

/**
 * The changes that write some of the copied sessions, such as those that a person kept, with the routines that they
 * need. Days without a session get no note.
 */
export function copyChanges(
  into: Journal,
  options: CopyWeeksOptions,
  sessions: readonly PlannedSession[],
): readonly NoteChange[] {
  if (sessions.length === 0) return [];
  const draft = new DraftJournal(into);
  takeRoutines(
    draft,
    options.from,
    sessions.flatMap(({ asked }) => asked.facts.routine?.id ?? []),
  );
  const { from: _from, firstWeek: _first, count, to, ...plan } = options;
  const dates = new Set<string>(sessions.map(({ date }) => date));
  draft.write(
    changesFor(draft.journal, { ...plan, weeks: weeksInRow(to, count) }, sessions).filter(
      ({ kind, note }) => kind === 'edit' || dates.has(dateOfNote(note)),
    ),
  );
  return draft.changes;
}

/** The steps of {@link copyWeeks}. */
export function* copyWeeksSteps(into: Journal, options: CopyWeeksOptions): Steps<CopyPlan> {
  const { from, firstWeek, count, to, ...plan } = options;
  const draft = new DraftJournal(into);
  const sources = weeksInRow(to, count).map((week, index) => {
    const source = addWeeks(firstWeek, index);
    return { week, source, asked: copiedNeeds(from, source, into, plan) };
  });
  const taken = takeRoutines(
    draft,
    from,
    sources.flatMap(({ asked }) => [...asked.routines]),
  );
  const weeks: CopiedWeek[] = [];
  let journal: Journal = draft.journal;
  for (const { week, source, asked } of sources) {
    const { placed, leftOut } = yield* planWeeksSteps(askedFor(journal, asked.needs), {
      ...plan,
      weeks: [week],
      explain: false,
      // Minima of rules are not part of what is copied.
      only: ({ need }) => need !== undefined,
    });
    weeks.push({ from: source, week, sessions: asked.sessions, placed, leftOut });
    journal = journalWithSessions(journal, {
      without: [],
      added: placed.map(({ asked: one, date, start }) => one.make(dayNumber(date), start)),
    });
  }
  return {
    weeks,
    ...taken,
    changes: copyChanges(
      into,
      options,
      weeks.flatMap(({ placed }) => placed),
    ),
  };
}

/**
 * Copies the sessions that stand in some weeks of one athlete into weeks of another one: how many of which kind, length,
 * effort and routine each week holds. Days, times and gaps are those of the receiving athlete: sessions are placed by
 * the planner, by that journal's own rules, hours and pains; what does not fit is left out, with the reason. What stands
 * in the weeks already counts, so that copying again adds nothing. Goals, remarks, and partners and places that the
 * receiving journal does not know stay behind.
 */
export function copyWeeks(into: Journal, options: CopyWeeksOptions): CopyPlan {
  return finish(copyWeeksSteps(into, options));
}

/** The same in slices, between which others may work; `undefined` when it was stopped. */
export function copyWeeksInSlices(
  into: Journal,
  options: CopyWeeksOptions & SliceOptions,
): Generator<SliceProgress, CopyPlan | undefined, void> {
  return inSlices(copyWeeksSteps(into, options), options);
}
