import type { Journal, Session } from '../../journal/journal';
import type { FindingCode } from '../../training/finding';
import { type CheckContext, checkContext } from '../../training/week-under-check';
import { changeChecker, speaksAgainst } from '../findings-added';
import { journalWithSessions, type SessionsChanged } from '../journal-with-sessions';
import { checkPlan } from '../solver/check-plan';
import { valueAt } from '../solver/order';
import type { Plan } from '../solver/plan';
import type { Steps } from '../solver/slices';
import { solveSteps } from '../solver/solve';
import { type AskedSessions, mayMove, movingSession, newSessions } from '../week-problem/asked-sessions';
import { buildProblemSteps, placeKey, type WeekProblem } from '../week-problem/build-problem';
import { type Habits, habitsBefore } from '../week-problem/kept-habits';
import type { Place } from '../week-problem/places';
import type { PlanWeeksOptions } from './weeks-plan';

/** Sessions placed change what the others count for; so few rounds see them all counted again. */
const mostRounds = 12;

/** How often the week check may find fault with a sort of session before no more of it is placed. */
const mostStrikes = 3;

/** A session that has found its place. */
export interface SolvedSession {
  readonly asked: AskedSessions;
  readonly place: Place;
  /** As it would stand in its note. */
  readonly session: Session;
}

/** A question and its answer. */
export interface AnsweredQuestion {
  readonly built: WeekProblem;
  readonly plan: Plan;
}

/** Sessions that have found none. */
export interface UnplacedSessions {
  readonly asked: AskedSessions;
  readonly count: number;
  /** The question that was answered last about them. */
  readonly question: AnsweredQuestion;
}

/** Solved weeks. */
export interface SolvedWeeks {
  readonly placed: readonly SolvedSession[];
  readonly unplaced: readonly UnplacedSessions[];
  /** The question that held everything that was asked, and its answer; `undefined` when nothing was asked. */
  readonly first: AnsweredQuestion | undefined;
  readonly isProven: boolean;
  readonly habits: Habits;
  /** The journal as it would be. */
  readonly context: CheckContext;
}

/** Thrown when the solver answers with a plan that its own judge refuses: a mistake of this program. */
export class IllegalPlanError extends Error {
  override readonly name = 'IllegalPlanError';
}

/** The sessions of one round, as changes of the journal. */
function changedBy(placed: readonly SolvedSession[]): SessionsChanged {
  const moved = placed.filter(({ asked, session }) => !standsAlready(asked, session));
  return {
    without: moved.flatMap(({ asked }) => (asked.what.is === 'moving' ? [asked.what.session] : [])),
    added: moved.map(({ session }) => session),
  };
}

/** Whether a session stays where it is. */
export function standsAlready({ what }: AskedSessions, session: Session): boolean {
  if (what.is === 'new') return false;
  const before = what.session;
  return before.day === session.day && before.entry.span?.value.start === session.entry.span?.value.start;
}

function solvedSessions(built: WeekProblem, plan: Plan): readonly SolvedSession[] {
  return plan.placed.flatMap(({ need, candidate }) => {
    const found = built.asked.find(({ id }) => id === need);
    const place = found?.places[candidate];
    if (!found || !place) return [];
    return [{ asked: found.asked, place, session: found.asked.make(place.day, place.start) }];
  });
}

/** What was asked for and found no place, limits or not. */
function unplacedOf(
  asked: readonly AskedSessions[],
  placed: readonly SolvedSession[],
  question: AnsweredQuestion,
): readonly UnplacedSessions[] {
  return asked.flatMap((one) => {
    const count = one.count - placed.filter(({ asked: { facts } }) => facts === one.facts).length;
    return count > 0 ? [{ asked: one, count, question }] : [];
  });
}

/** A placed session with which the week check finds fault. */
interface Fault {
  readonly faulty: SolvedSession;
  /** How many like sessions stand before it without fault. */
  readonly fine: number;
}

/** The first of the placed sessions that breaks a rule beside those before it. */
function* firstFault(
  placed: readonly SolvedSession[],
  check: (changed: SessionsChanged) => readonly FindingCode[],
): Steps<Fault | undefined> {
  const { without, added } = changedBy(placed);
  if (check({ without, added }).length === 0) return undefined;
  let faulty: SolvedSession | undefined;
  for (const one of placed) {
    yield 0;
    const count = added.indexOf(one.session) + 1;
    if (count === 0 || check({ without, added: added.slice(0, count) }).length === 0) continue;
    faulty = one;
    break;
  }
  if (!faulty) return undefined;
  const { facts } = faulty.asked;
  const before = placed.slice(0, placed.indexOf(faulty));
  return { faulty, fine: before.filter(({ asked }) => asked.facts === facts).length };
}

/** Names a sort of sessions, the same in every round. */
export function sortOf({ what, facts }: AskedSessions): string {
  return what.is === 'new' ? what.demand.group : `${facts.session.note} ${facts.session.entry.range.start}`;
}

/** Asks for no more of a sort than the week check has let pass. */
function limited(
  asked: readonly AskedSessions[],
  limits: ReadonlyMap<string, number>,
): readonly AskedSessions[] {
  return asked.flatMap((one) => {
    const count = Math.min(one.count, limits.get(`${one.week} ${sortOf(one)}`) ?? one.count);
    return count > 0 ? [{ ...one, count }] : [];
  });
}

interface SolvedRound {
  readonly built: WeekProblem;
  readonly plan: Plan;
  readonly placed: readonly SolvedSession[];
  readonly unplaced: readonly UnplacedSessions[];
  readonly isProven: boolean;
}

/**
 * Solves one question. Its plan must pass the solver's own judge, and then the training layer's check, which has the
 * last word: a session with which it finds fault is placed elsewhere, or left out.
 */
function* solveRound(
  context: CheckContext,
  asked: readonly AskedSessions[],
  habits: Habits,
  options: PlanWeeksOptions,
): Steps<SolvedRound> {
  const check = changeChecker(context.journal, options);
  const codes = (changed: SessionsChanged) =>
    check(changed)
      .filter(speaksAgainst)
      .map(({ code }) => code);
  const refused = new Set<string>();
  const strikes = new Map<string, number>();
  const limits = new Map<string, number>();
  const moving = asked.flatMap(({ what, facts }) => (what.is === 'moving' ? [facts] : []));
  for (;;) {
    const built = yield* buildProblemSteps({
      context,
      habits,
      weeks: options.weeks,
      asked: limited(asked, limits),
      without: moving,
      refused,
      ...(options.comfortable ? { comfortable: options.comfortable } : {}),
      ...(options.timeOfDay ? { timeOfDay: options.timeOfDay } : {}),
    });
    const plan = yield* solveSteps(
      built.problem,
      options.nodeLimit === undefined ? {} : { nodeLimit: options.nodeLimit },
    );
    yield 0;
    const [violation] = checkPlan(built.problem, plan.placed).violations;
    if (violation) throw new IllegalPlanError(`The plan breaks ${violation.rule}.`);
    const placed = solvedSessions(built, plan);
    yield 0;
    const fault = yield* firstFault(placed, codes);
    if (!fault) {
      const isProven =
        plan.status === 'proven best' && !built.isApproximate && refused.size === 0 && limits.size === 0;
      return { built, plan, placed, unplaced: unplacedOf(asked, placed, { built, plan }), isProven };
    }
    // A session can count for another need than the one it was meant for. Other places are tried, and then given up.
    const { asked: sort, place } = fault.faulty;
    const key = `${sort.week} ${sortOf(sort)}`;
    const strike = (strikes.get(key) ?? 0) + 1;
    strikes.set(key, strike);
    refused.add(placeKey(sort, place.day, place.start));
    if (strike >= mostStrikes) limits.set(key, fault.fine);
  }
}

/** Of one need, what was planned and missed comes before what is wanted anew: its note says already what it holds. */
function missedFirst(asked: readonly AskedSessions[]): readonly AskedSessions[] {
  return asked.map((one) =>
    one.importance === undefined
      ? one
      : { ...one, importance: 2 * one.importance + (one.what.is === 'new' ? 1 : 0) },
  );
}

function* askedOf(
  context: CheckContext,
  habits: Habits,
  options: PlanWeeksOptions,
  moves: boolean,
): Steps<readonly AskedSessions[]> {
  const asked: AskedSessions[] = [];
  for (const week of options.weeks) {
    yield 0;
    asked.push(
      ...(moves
        ? context
            .weeks(week)
            .standing.filter(mayMove)
            .map((facts) => movingSession(context, week, facts))
        : []),
      ...newSessions(context, week, habits, options.only),
    );
  }
  return moves ? missedFirst(asked) : asked;
}

/** Gives everything that the weeks lack a place, as far as that can be. */
export function* solveWeeks(journal: Journal, options: PlanWeeksOptions): Steps<SolvedWeeks> {
  const { today, zone } = options;
  const original = checkContext(journal, { today, zone });
  const [firstWeek] = options.weeks;
  if (firstWeek === undefined) throw new RangeError('At least one week is planned.');
  yield 0;
  const habits = habitsBefore(original, firstWeek);
  let placed: readonly SolvedSession[] = [];
  let first: SolvedWeeks['first'];
  // What was missed and finds no place is asked for once; it stands where it was in every round after.
  let missed: readonly UnplacedSessions[] = [];
  let unplaced: readonly UnplacedSessions[] = [];
  let isProven = true;
  let context = original;
  for (let round = 0; round < mostRounds; round += 1) {
    // Between the searches there is work, too, between which others may do theirs.
    yield 0;
    const asked = yield* askedOf(context, habits, options, round === 0 && options.mode === 'rearrange');
    yield 0;
    unplaced = [];
    if (asked.length === 0) break;
    const solved = yield* solveRound(context, asked, habits, options);
    first ??= solved;
    unplaced = solved.unplaced;
    // What is placed only now could have been placed better together with the rest.
    isProven = isProven && solved.isProven && (round === 0 || solved.placed.length === 0);
    if (solved.placed.length === 0) break;
    placed = [...placed, ...solved.placed];
    if (round === 0) missed = unplaced.filter(({ asked: { what } }) => what.is === 'moving');
    context = checkContext(journalWithSessions(journal, changedBy(placed)), { today, zone });
  }
  const left = [...missed, ...unplaced.filter((one) => !missed.includes(one))];
  return { placed, unplaced: left, first, isProven, habits, context };
}

/** Whether it is proven that not everything fits. */
export function isImpossible({ first, unplaced }: SolvedWeeks): boolean {
  if (!first || unplaced.length === 0) return false;
  const { status, bound } = first.plan;
  return status === 'proven best' || valueAt(bound, 'leftOut') > 0;
}
