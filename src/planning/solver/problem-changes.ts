/** Problems of which something is given up: the material of explanations and remedies. All are new values. */
import {
  belongsTo,
  type CountRule,
  type Need,
  type PlanningProblem,
  type Rule,
  type StandingSession,
  weekOfDay,
} from './problem';

/** What a part of a problem is. */
export type PartKind = 'need' | 'rule' | 'standing' | 'hours';

/** A part of a problem that could be given up: a need, a hard rule, a standing session, or blocking hours. */
export interface ProblemPart {
  readonly kind: PartKind;
  readonly id: string;
}

/** Rules that can keep sessions from standing. Air and rows never do. */
function isHard(rule: Rule): boolean {
  return rule.type !== 'air' && rule.type !== 'row';
}

/**
 * All parts of a problem: needs that must not be left out, hard rules, standing sessions, then blocking
 * hours in the order in which they appear.
 */
export function partsOf(problem: PlanningProblem): readonly ProblemPart[] {
  const part =
    (kind: PartKind) =>
    ({ id }: { readonly id: string }): ProblemPart => ({ kind, id });
  const hours = new Set(
    problem.needs.flatMap((need) => need.candidates.flatMap((candidate) => candidate.blockedBy ?? [])),
  );
  return [
    ...problem.needs.filter((need) => need.importance !== undefined && need.count > 0).map(part('need')),
    ...problem.rules.filter(isHard).map(part('rule')),
    ...problem.standing.map(part('standing')),
    ...[...hours].map((id): ProblemPart => ({ kind: 'hours', id })),
  ];
}

/**
 * The problem in which only these parts ask for anything; everything else in it still helps. A need that
 * is not kept may be left out, and a standing session that is not kept takes no time but still counts
 * towards minima. So giving up a part never makes less possible, which is what the search for a smallest
 * conflict relies on. One body at one time, air and rows always stay.
 */
export function onlyParts(problem: PlanningProblem, ids: ReadonlySet<string>): PlanningProblem {
  const givenUp = problem.standing.filter((session) => !ids.has(session.id));
  return {
    ...problem,
    needs: problem.needs.map((need) => {
      const { importance, ...optional } = withHours(need, (id) => ids.has(id));
      return ids.has(need.id) && importance !== undefined ? { ...optional, importance } : optional;
    }),
    rules: problem.rules
      .filter((rule) => !isHard(rule) || ids.has(rule.id))
      .map((rule) => (rule.type === 'count' ? countingAlready(rule, givenUp, problem.weeks) : rule)),
    standing: problem.standing.filter((session) => ids.has(session.id)),
  };
}

function withHours(need: Need, kept: (id: string) => boolean): Need {
  return {
    ...need,
    candidates: need.candidates.map((candidate) => ({
      ...candidate,
      blockedBy: (candidate.blockedBy ?? []).filter(kept),
    })),
  };
}

function countingAlready(rule: CountRule, sessions: readonly StandingSession[], weeks: number): CountRule {
  const countedAlready = Array.from({ length: weeks }, (_, week) => {
    const more = sessions.filter(
      (session) => weekOfDay(session.day) === week && belongsTo(session.labels, rule.of),
    );
    return (rule.countedAlready?.[week] ?? 0) + more.length;
  });
  return { ...rule, countedAlready };
}

/** The problem without these needs, rules, standing sessions and blocking hours, as if never there. */
export function withoutParts(problem: PlanningProblem, ...ids: readonly string[]): PlanningProblem {
  const stays = ({ id }: { readonly id: string }) => !ids.includes(id);
  return {
    ...problem,
    needs: problem.needs.filter(stays).map((need) => withHours(need, (id) => !ids.includes(id))),
    rules: problem.rules.filter(stays),
    standing: problem.standing.filter(stays),
  };
}

/** The problem with `fewer` sessions of a need less. */
export function withFewerSessions(problem: PlanningProblem, need: string, fewer = 1): PlanningProblem {
  return {
    ...problem,
    needs: problem.needs.map((other) =>
      other.id === need ? { ...other, count: Math.max(0, other.count - fewer) } : other,
    ),
  };
}

/** The problem with another number of minutes in a gap or cap rule. */
export function withMinutes(problem: PlanningProblem, rule: string, minutes: number): PlanningProblem {
  return {
    ...problem,
    rules: problem.rules.map((other) =>
      other.id === rule && (other.type === 'gap' || other.type === 'cap') ? { ...other, minutes } : other,
    ),
  };
}
