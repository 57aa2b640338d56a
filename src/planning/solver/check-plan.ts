/**
 * An independent judge of plans. It reads the rules' meaning from `problem.ts` alone and shares no code
 * with the search, so that a mistake in one of them shows.
 */
import { type CheckedSession, isOf, judgePlan } from './judge-plan';
import type { Objective } from './order';
import type { PlacedSession } from './plan';
import type { PlanningProblem, Rule, SessionClass } from './problem';

/** Something that a plan may not do. */
export interface PlanViolation {
  /** Id of the rule, or what is wrong apart from the rules. */
  readonly rule: string;
  /** Needs and standing sessions concerned, by id. */
  readonly sessions: readonly string[];
}

/** What a plan breaks, and what it is worth. */
export interface PlanCheck {
  readonly violations: readonly PlanViolation[];
  readonly objective: Objective;
}

/** Judges the sessions that a plan places, together with those that stand. */
export function checkPlan(problem: PlanningProblem, placed: readonly PlacedSession[]): PlanCheck {
  const needs = new Map(problem.needs.map((need) => [need.id, need]));
  const violations: PlanViolation[] = [];
  const all: CheckedSession[] = problem.standing.map((session) => ({ ...session, placed: false }));
  for (const session of placed) {
    const need = needs.get(session.need);
    const candidate = need?.candidates[session.candidate];
    if (need === undefined || candidate === undefined) {
      violations.push({ rule: 'unknown place', sessions: [session.need] });
      continue;
    }
    const same = (['start', 'end', 'day'] as const).every((field) => candidate[field] === session[field]);
    if (!same) violations.push({ rule: 'unknown place', sessions: [session.need] });
    for (const id of candidate.blockedBy ?? []) violations.push({ rule: id, sessions: [session.need] });
    const { start, end, day } = candidate;
    all.push({ id: need.id, labels: need.labels, start, end, day, placed: true });
  }
  for (const need of problem.needs) {
    const stands = placed.filter((session) => session.need === need.id).length;
    if (stands > need.count) violations.push({ rule: 'more than wanted', sessions: [need.id] });
  }
  violations.push(
    ...overlaps(problem, all),
    ...problem.rules.flatMap((rule) => breaches(problem, rule, all)),
  );
  return { violations, objective: judgePlan(problem, placed, all) };
}

/** Whether what these sessions break among themselves is to be reported. */
function counts(problem: PlanningProblem, sessions: readonly CheckedSession[]): boolean {
  if (sessions.some((session) => session.placed)) return true;
  return !problem.standingMayBreakRules && sessions.some((session) => session.day >= 0);
}

function overlaps(problem: PlanningProblem, all: readonly CheckedSession[]): PlanViolation[] {
  const found: PlanViolation[] = [];
  for (let i = 0; i < all.length; i += 1) {
    for (let j = i + 1; j < all.length; j += 1) {
      const [a, b] = [all[i], all[j]];
      if (a === undefined || b === undefined || !counts(problem, [a, b])) continue;
      if (Math.max(a.start, b.start) < Math.min(a.end, b.end)) {
        found.push({ rule: 'one body at one time', sessions: [a.id, b.id] });
      }
    }
  }
  return found;
}

function breaches(problem: PlanningProblem, rule: Rule, all: readonly CheckedSession[]): PlanViolation[] {
  const breach = (sessions: readonly CheckedSession[]): PlanViolation => ({
    rule: rule.id,
    sessions: sessions.map(({ id }) => id),
  });
  /** Sums over the sessions of each day or week; standing ones may exceed the limit on their own. */
  const overLimit = (
    of: SessionClass,
    spans: number,
    spanOf: (session: CheckedSession) => number,
    measure: (sessions: readonly CheckedSession[]) => number,
    limit: number,
  ): PlanViolation[] => {
    const found: PlanViolation[] = [];
    for (let span = 0; span < spans; span += 1) {
      const sessions = all.filter((session) => spanOf(session) === span && isOf(session, of));
      const alone = measure(sessions.filter((session) => !session.placed));
      const allowed = problem.standingMayBreakRules ? Math.max(limit, alone) : limit;
      if (measure(sessions) > allowed) found.push(breach(sessions));
    }
    return found;
  };
  const week = (session: CheckedSession) => Math.floor(session.day / 7);
  switch (rule.type) {
    case 'gap':
    case 'day-gap': {
      const found: PlanViolation[] = [];
      const isTooClose = (earlier: CheckedSession, later: CheckedSession) =>
        rule.type === 'gap' ? later.start - earlier.end < rule.minutes : later.day - earlier.day < rule.days;
      for (const earlier of all.filter((session) => isOf(session, rule.earlier))) {
        for (const later of all.filter((session) => isOf(session, rule.later))) {
          if (later === earlier || later.start < earlier.start || !counts(problem, [earlier, later]))
            continue;
          if (later.start === earlier.start && all.indexOf(later) < all.indexOf(earlier)) continue;
          if (isTooClose(earlier, later)) found.push(breach([earlier, later]));
        }
      }
      return found;
    }
    case 'block':
      return all
        .filter((s) => counts(problem, [s]) && isOf(s, rule.of) && s.start < rule.to && s.end > rule.from)
        .map((session) => breach([session]));
    case 'cap':
      return overLimit(
        rule.of,
        7 * problem.weeks,
        (session) => session.day,
        (sessions) => sessions.reduce((minutes, { start, end }) => minutes + (end - start), 0),
        rule.minutes,
      );
    case 'count':
      return overLimit(rule.of, problem.weeks, week, (sessions) => sessions.length, rule.max ?? Infinity);
    case 'rest':
      return rule.required
        ? overLimit(
            rule.of,
            problem.weeks,
            week,
            (list) => new Set(list.map((s) => s.day)).size,
            7 - rule.days,
          )
        : [];
    case 'air':
    case 'row':
      return [];
  }
}
