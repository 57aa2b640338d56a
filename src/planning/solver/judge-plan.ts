/** What a plan is worth, worked out from the meaning of the levels alone: a part of the judge of plans. */
import type { Level, Objective, ObjectiveFigure } from './order';
import type { PlacedSession } from './plan';
import type { Label, PlanningProblem, SessionClass } from './problem';

/** A session of a plan, placed or standing. */
export interface CheckedSession {
  readonly id: string;
  readonly labels: readonly Label[];
  readonly start: number;
  readonly end: number;
  readonly day: number;
  readonly placed: boolean;
}

/** Whether a session belongs to a class. */
export function isOf(session: CheckedSession, wanted: SessionClass): boolean {
  const labels = new Set(session.labels);
  return wanted.every((label) => labels.has(label));
}

/**
 * The objective of a plan.
 * @param placed the sessions that the plan places.
 * @param all those and the standing ones.
 */
export function judgePlan(
  problem: PlanningProblem,
  placed: readonly PlacedSession[],
  all: readonly CheckedSession[],
): Objective {
  return problem.order.flatMap((level): ObjectiveFigure[] => {
    if (level !== 'leftOutByImportance') return [{ level, value: figureAt(level, problem, placed, all) }];
    const importances = new Set(problem.needs.flatMap((need) => need.importance ?? []));
    return [...importances]
      .sort((a, b) => a - b)
      .map((importance) => ({ level, importance, value: missing(problem, placed, importance) }));
  });
}

function figureAt(
  level: Exclude<Level, 'leftOutByImportance'>,
  problem: PlanningProblem,
  placed: readonly PlacedSession[],
  all: readonly CheckedSession[],
): number {
  switch (level) {
    case 'leftOut':
      return missing(problem, placed);
    case 'shortfall':
      return shortfall(problem, all);
    case 'row':
      return daysInARow(problem, all);
    case 'air':
      return airMissing(problem, all);
    case 'moved':
      return moved(problem, placed);
    case 'deviation':
    case 'preference':
      return placed.reduce((sum, session) => {
        const need = problem.needs.find(({ id }) => id === session.need);
        return sum + (need?.candidates[session.candidate]?.[level] ?? 0);
      }, 0);
  }
}

/** Needed sessions that do not stand, of one importance or of all. */
function missing(problem: PlanningProblem, placed: readonly PlacedSession[], importance?: number): number {
  return problem.needs.reduce((sum, need) => {
    if (need.importance === undefined) return sum;
    if (importance !== undefined && need.importance !== importance) return sum;
    return sum + need.count - placed.filter((session) => session.need === need.id).length;
  }, 0);
}

function moved(problem: PlanningProblem, placed: readonly PlacedSession[]): number {
  return problem.needs.reduce((sum, need) => {
    const stood = need.candidates.filter((candidate) => candidate.standsHere === true).length;
    const kept = placed.filter(
      (session) => session.need === need.id && need.candidates[session.candidate]?.standsHere === true,
    );
    return sum + Math.min(stood, need.count) - kept.length;
  }, 0);
}

function shortfall(problem: PlanningProblem, all: readonly CheckedSession[]): number {
  let missing = 0;
  for (let week = 0; week < problem.weeks; week += 1) {
    const inWeek = all.filter((session) => Math.floor(session.day / 7) === week);
    for (const rule of problem.rules) {
      if (rule.type === 'count') {
        const stand = inWeek.filter((session) => isOf(session, rule.of)).length;
        missing += Math.max(0, (rule.min ?? 0) - stand - (rule.countedAlready?.[week] ?? 0));
      }
      if (rule.type === 'rest') {
        const trained = new Set(inWeek.filter((s) => isOf(s, rule.of)).map((s) => s.day)).size;
        missing += Math.max(0, rule.days - (7 - trained));
      }
    }
  }
  return missing;
}

function daysInARow(problem: PlanningProblem, all: readonly CheckedSession[]): number {
  let rows = 0;
  for (const rule of problem.rules) {
    if (rule.type !== 'row') continue;
    const days = new Set(all.filter((session) => isOf(session, rule.of)).map((session) => session.day));
    for (const day of days) if (day >= 0 && days.has(day - 1)) rows += 1;
  }
  return rows;
}

function airMissing(problem: PlanningProblem, all: readonly CheckedSession[]): number {
  let steps = 0;
  for (const rule of problem.rules) {
    if (rule.type !== 'air') continue;
    for (const later of all) {
      if (later.day < 0 || !isOf(later, rule.later)) continue;
      const before = all.filter((session) => session.start < later.start && isOf(session, rule.earlier));
      const lastEnd = Math.max(...before.map((session) => session.end));
      const gap = Math.max(0, later.start - lastEnd);
      if (gap < rule.comfortable) steps += Math.ceil((rule.comfortable - gap) / rule.step);
    }
  }
  return steps;
}
