/** The columns of a problem's objective, with the largest value that any plan can reach in each. */
import type { Column } from './cost';
import type { Level } from './order';
import type { Need, PlanningProblem } from './problem';

/** The distinct importances of the needs, the most important first. */
export function importancesOf(problem: PlanningProblem): readonly number[] {
  const found = new Set<number>();
  for (const need of problem.needs) if (need.importance !== undefined) found.add(need.importance);
  return [...found].sort((a, b) => a - b);
}

/** The columns in the problem's order. `leftOutByImportance` has one for each importance. */
export function columnsOf(problem: PlanningProblem): readonly Column[] {
  return problem.order.flatMap((level): readonly Column[] => {
    if (level !== 'leftOutByImportance') return [{ level, largest: largestAt(problem, level) }];
    return importancesOf(problem).map((importance) => ({
      level,
      importance,
      largest: sessionsOf(problem.needs.filter((need) => need.importance === importance)),
    }));
  });
}

function sessionsOf(needs: readonly Need[]): number {
  return needs.reduce((sum, need) => sum + need.count, 0);
}

function dearestOf(problem: PlanningProblem, cost: 'deviation' | 'preference'): number {
  return problem.needs.reduce((sum, need) => {
    const dearest = need.candidates.reduce((largest, candidate) => Math.max(largest, candidate[cost]), 0);
    return sum + need.count * dearest;
  }, 0);
}

function largestAt(problem: PlanningProblem, level: Exclude<Level, 'leftOutByImportance'>): number {
  const sessions = sessionsOf(problem.needs);
  switch (level) {
    case 'leftOut':
      return sessionsOf(problem.needs.filter((need) => need.importance !== undefined));
    case 'shortfall':
      return problem.rules.reduce((sum, rule) => {
        if (rule.type === 'count') return sum + problem.weeks * (rule.min ?? 0);
        return rule.type === 'rest' ? sum + problem.weeks * rule.days : sum;
      }, 0);
    case 'row':
      return 7 * problem.weeks * problem.rules.filter((rule) => rule.type === 'row').length;
    case 'air':
      return problem.rules.reduce((sum, rule) => {
        if (rule.type !== 'air') return sum;
        return sum + (sessions + problem.standing.length) * Math.ceil(rule.comfortable / rule.step);
      }, 0);
    case 'moved':
      return sessions;
    case 'deviation':
    case 'preference':
      return dearestOf(problem, level);
  }
}
