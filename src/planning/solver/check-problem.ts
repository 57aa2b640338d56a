/** Refuses problems that say nothing sensible, before a search would quietly answer something else. */
import { type PlanningProblem, type Rule, weekOfDay } from './problem';

/** Thrown for a problem that contradicts itself. The message names the part by its id. */
export class InvalidPlanningProblemError extends Error {
  override readonly name = 'InvalidPlanningProblemError';
}

/**
 * Checks a problem.
 * @throws InvalidPlanningProblemError with the first thing found wrong.
 */
export function checkProblem(problem: PlanningProblem): void {
  demand(isWhole(problem.weeks) && problem.weeks >= 1, 'A problem has at least one week.');
  demand(new Set(problem.order).size === problem.order.length, 'The order names a level twice.');
  checkIds(problem);
  for (const need of problem.needs) {
    const where = `Need ${need.id}`;
    demand(isWhole(need.count) && need.count >= 0, `${where}: the count is not a whole number.`);
    demand(isWhole(need.week) && need.week < problem.weeks, `${where}: the week lies outside the horizon.`);
    demand(need.importance === undefined || isWhole(need.importance), `${where}: importance is not whole.`);
    for (const candidate of need.candidates) {
      checkTimes(`${where}: a candidate`, candidate);
      demand(weekOfDay(candidate.day) === need.week, `${where}: a candidate lies in another week.`);
      demand(isWhole(candidate.deviation), `${where}: deviation is not a whole number.`);
      demand(isWhole(candidate.preference), `${where}: preference is not a whole number.`);
    }
  }
  for (const session of problem.standing) {
    checkTimes(`Session ${session.id}`, session);
    demand(session.day < 7 * problem.weeks, `Session ${session.id} lies after the horizon.`);
  }
  for (const rule of problem.rules) checkRule(rule);
  checkDayOrder(problem);
}

function checkIds(problem: PlanningProblem): void {
  const ids = [...problem.needs, ...problem.standing, ...problem.rules].map(({ id }) => id);
  const known = new Set(ids);
  demand(known.size === ids.length, 'Two needs, sessions or rules share an id.');
  for (const need of problem.needs) {
    for (const { blockedBy } of need.candidates) {
      for (const id of blockedBy ?? []) {
        demand(!known.has(id), `${id} is both a blocking hour and a need, session or rule.`);
      }
    }
  }
}

function checkTimes(where: string, times: { start: number; end: number; day: number }): void {
  const { start, end, day } = times;
  demand([start, end, day].every(Number.isSafeInteger), `${where} has a time that is not whole.`);
  demand(start < end, `${where} ends before it starts.`);
}

function checkRule(rule: Rule): void {
  const where = `Rule ${rule.id}`;
  switch (rule.type) {
    case 'gap':
    case 'cap':
      demand(isWhole(rule.minutes), `${where}: minutes are not a whole number.`);
      return;
    case 'day-gap':
      demand(isWhole(rule.days), `${where}: days are not a whole number.`);
      return;
    case 'count':
      demand(
        [rule.min ?? 0, rule.max ?? 0, ...(rule.countedAlready ?? [])].every(isWhole),
        `${where}: a limit is not a whole number.`,
      );
      return;
    case 'rest':
      demand(isWhole(rule.days) && rule.days <= 7, `${where}: a week has 0 to 7 rest days.`);
      return;
    case 'block':
      demand(rule.from <= rule.to, `${where} ends before it starts.`);
      return;
    case 'air':
      demand(isWhole(rule.comfortable), `${where}: the comfortable gap is not a whole number.`);
      demand(isWhole(rule.step) && rule.step > 0, `${where}: the step is not a whole number above 0.`);
      return;
    case 'row':
      return;
  }
}

/** A later day never starts before an earlier one: the axis of minutes and the days agree. */
function checkDayOrder(problem: PlanningProblem): void {
  const sessions = [...problem.needs.flatMap((need) => need.candidates), ...problem.standing];
  sessions.sort((a, b) => a.start - b.start);
  let day = -Infinity;
  for (const session of sessions) {
    demand(session.day >= day, `The session at minute ${session.start} lies on a day before an earlier one.`);
    day = session.day;
  }
}

/** Whether a number is a whole number, at least 0. */
function isWhole(value: number): boolean {
  return Number.isSafeInteger(value) && value >= 0;
}

function demand(condition: boolean, message: string): asserts condition {
  if (!condition) throw new InvalidPlanningProblemError(message);
}
