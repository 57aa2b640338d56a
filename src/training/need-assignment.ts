import type { JournalPlan, Need, Session } from '../journal/journal';
import type { IsoWeek } from '../notation/time/iso-week';
import { askedOfWeek } from './block/asked-in-week';
import { kindsOf } from './kinds';
import { openNeeds } from './open-needs';
import { sessionMinutes } from './session-minutes';

/** The needs that each session of a week counts for; a session that counts for none is left out. */
export type NeedAssignment = ReadonlyMap<Session, readonly Need[]>;

/** Whether a session says where, with whom or after which routine in another way than a need asks. */
export function contradicts(session: Session, need: Need): boolean {
  const { where, routine } = session.entry;
  const partners = session.entry.with.map((one) => one.value);
  const elsewhere = need.where !== undefined && where !== undefined && where.value !== need.where;
  const otherRoutine = need.routine !== undefined && routine !== undefined && routine.value !== need.routine;
  const withOthers = partners.length > 0 && need.with.some((name) => !partners.includes(name));
  return elsewhere || otherRoutine || withOthers;
}

/** Whether a session is of the need's kind, or of an own kind that is like it, and does not contradict it. */
export function fits(session: Session, need: Need, kinds: JournalPlan['kinds']): boolean {
  return kindsOf(session.kind, kinds).includes(need.kind) && !contradicts(session, need);
}

/** Counts what each need of a week has been given so far. Lives only while one week is assigned. */
class Shares {
  readonly #given = new Map<Need, { sessions: number; minutes: number }>();

  constructor(
    private readonly plan: JournalPlan,
    private readonly week: IsoWeek,
  ) {}

  isShort(need: Need): boolean {
    const given = this.#given.get(need);
    const { count, minutes } = askedOfWeek(this.plan, need, this.week).perWeek;
    if (count !== undefined) return (given?.sessions ?? 0) < count;
    return (given?.minutes ?? 0) < minutes;
  }

  give(need: Need, minutes: number): void {
    const given = this.#given.get(need) ?? { sessions: 0, minutes: 0 };
    this.#given.set(need, { sessions: given.sessions + 1, minutes: given.minutes + minutes });
  }

  /** The first need that is still short, or the first of all when none is. */
  pick(needs: readonly Need[]): Need | undefined {
    return needs.find((need) => this.isShort(need)) ?? needs[0];
  }
}

/**
 * Says what the sessions of one week count for.
 *
 * A session that names goals in `for:` counts, for each of them, for the first need of its kind that is still
 * short, whether the goal is open or not; when none of its goals has such a need, for one of every week.
 * Without `for:` it counts for the first need of its kind that is still short, needs of the nearest open goal
 * first. What comes on top of satisfied needs counts for the first of them, so that a maximum and the need's own
 * gap see it. A need that names `where:`, `with:` or `routine:` takes only sessions that do not contradict it.
 *
 * Sessions that name their goals are dealt with first, so that the others fill what these leave.
 * @param sessions The sessions that stand in the week, in order of time.
 */
export function assignNeeds(sessions: readonly Session[], plan: JournalPlan, week: IsoWeek): NeedAssignment {
  const open = openNeeds(plan, week);
  const everyWeek = open.filter((need) => need.goal === undefined);
  const shares = new Shares(plan, week);
  const assigned = new Map<Session, readonly Need[]>();

  const assign = (session: Session, choices: readonly (readonly Need[])[]): boolean => {
    const needs = choices.flatMap((choice) => {
      const need = shares.pick(choice.filter((one) => fits(session, one, plan.kinds)));
      return need ? [need] : [];
    });
    if (needs.length === 0) return false;
    const minutes = sessionMinutes(session, needs, plan) ?? 0;
    for (const need of needs) shares.give(need, minutes);
    assigned.set(session, needs);
    return true;
  };

  for (const session of sessions.filter((one) => one.entry.for.length > 0)) {
    const ids = new Set(session.entry.for.map((goal) => goal.value));
    const ofGoals = [...ids].map((id) => plan.goals.get(id)?.needs ?? []);
    if (!assign(session, ofGoals)) assign(session, [everyWeek]);
  }
  for (const session of sessions.filter((one) => one.entry.for.length === 0)) assign(session, [open]);
  return assigned;
}
