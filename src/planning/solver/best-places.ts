/** Where one session could stand instead, when everything else stays where it is. */
import { checkPlan, type PlanViolation } from './check-plan';
import { compareObjectives, differenceOf, type Objective } from './order';
import type { PlacedSession } from './plan';
import type { PlanningProblem } from './problem';

/** A legal place for a session. */
export interface BestPlace {
  readonly session: PlacedSession;
  readonly objective: Objective;
  /** What it costs more than now, level by level; below 0 where it is better. */
  readonly difference: Objective;
}

/**
 * The best legal places for one session of a need.
 * @param placed the sessions as they are placed now.
 * @param need id of the session's need.
 * @param start where the session stands now, or `undefined` when it does not stand yet.
 * @param limit how many places to give; 3 when absent.
 * @returns the best first, without the place where it stands now; of equal worth, the earliest first.
 */
export function bestPlaces(
  problem: PlanningProblem,
  placed: readonly PlacedSession[],
  need: string,
  start?: number,
  limit = 3,
): readonly BestPlace[] {
  const now = checkPlan(problem, placed).objective;
  const others = placed.filter((session) => session.need !== need || session.start !== start);
  // What the others break among themselves is not this session's fault.
  const broken = new Set(checkPlan(problem, others).violations.map(keyOf));
  const candidates = problem.needs.find(({ id }) => id === need)?.candidates ?? [];
  const places = candidates.flatMap((candidate, index): BestPlace[] => {
    if (candidate.start === start || (candidate.blockedBy?.length ?? 0) > 0) return [];
    const session = {
      need,
      candidate: index,
      start: candidate.start,
      end: candidate.end,
      day: candidate.day,
    };
    const { violations, objective } = checkPlan(problem, [...others, session]);
    if (violations.some((violation) => !broken.has(keyOf(violation)))) return [];
    return [{ session, objective, difference: differenceOf(objective, now) }];
  });
  return places
    .sort((a, b) => compareObjectives(a.objective, b.objective) || a.session.start - b.session.start)
    .slice(0, limit);
}

function keyOf(violation: PlanViolation): string {
  return JSON.stringify([violation.rule, violation.sessions]);
}
