import type { JournalPlan, Need, Routine, Session } from '../journal/journal';
import type { Rating } from '../notation/entries';
import type { IsoDate } from '../notation/time/iso-date';
import { kindsOf } from './kinds';
import { sessionMinutes, sessionRoutine } from './session-minutes';
import { type SessionState, sessionState, stands } from './session-state';

/** Effort from which a session is hard: "very hard" on Foster's ten-point scale (read where it is quoted). */
export const hardEffort: Rating = 7;

/** The effort of what would be hard, in weeks that hold nothing hard. No source. */
export const gentleEffort: Rating = hardEffort - 1;

/** What training needs to know of a session, taken from its line, its needs and its routine. */
export interface SessionFacts {
  readonly session: Session;
  readonly state: SessionState;
  readonly stands: boolean;
  /** Its kind, what that is like, and so on. */
  readonly kinds: readonly string[];
  readonly isRecovery: boolean;
  readonly countsFor: readonly Need[];
  /** The goals that it names, or that the needs it counts for belong to. */
  readonly goals: readonly string[];
  /** Its rating, else the rating of a need it counts for, else 7. */
  readonly effort: Rating;
  readonly effortFrom: 'session' | 'need' | 'default';
  /** How long it lasts, when anything says. */
  readonly minutes?: number;
  readonly routine?: Routine;
  /** What its routine trains. */
  readonly regions: readonly string[];
}

function goalsOf(session: Session, countsFor: readonly Need[]): readonly string[] {
  const named = session.entry.for.map((goal) => goal.value);
  if (named.length > 0) return [...new Set(named)];
  return [...new Set(countsFor.flatMap((need) => (need.goal === undefined ? [] : [need.goal])))];
}

function effortOf(session: Session, countsFor: readonly Need[]): Pick<SessionFacts, 'effort' | 'effortFrom'> {
  if (session.entry.rating) return { effort: session.entry.rating.value, effortFrom: 'session' };
  const asked = countsFor.find((need) => need.rating !== undefined)?.rating;
  return asked === undefined
    ? { effort: hardEffort, effortFrom: 'default' }
    : { effort: asked, effortFrom: 'need' };
}

/** The facts of `session`, which counts for the needs `countsFor`, as they are on the day `today`. */
export function sessionFacts(
  session: Session,
  countsFor: readonly Need[],
  plan: JournalPlan,
  today: IsoDate,
): SessionFacts {
  const state = sessionState(session, today);
  const kinds = kindsOf(session.kind, plan.kinds);
  const routine = sessionRoutine(session, countsFor, plan);
  const minutes = sessionMinutes(session, countsFor, plan);
  return {
    session,
    state,
    stands: stands(state),
    kinds,
    isRecovery: kinds.includes('recovery'),
    countsFor,
    goals: goalsOf(session, countsFor),
    ...effortOf(session, countsFor),
    ...(minutes === undefined ? {} : { minutes }),
    ...(routine ? { routine } : {}),
    regions: routine?.regions ?? [],
  };
}

/** Whether it loads the body hard: effort 7 and above, recovery never. */
export function isHard(facts: SessionFacts): boolean {
  return facts.effort >= hardEffort && !facts.isRecovery;
}
