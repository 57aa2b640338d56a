/** What the rules say about two sessions, or about one session at one place. */
import { belongsTo, type Label, type PlanningProblem } from './problem';

/** A session as far as gaps and blocks are concerned. */
interface TimedSession {
  readonly labels: readonly Label[];
  readonly start: number;
  readonly end: number;
  readonly day: number;
}

/**
 * Minutes that must pass from the end of a session with the labels `earlier` to the start of a later one
 * with the labels `later`; 0 when no rule asks for any (they may follow each other at once).
 */
export function gapMinutes(
  problem: PlanningProblem,
  earlier: readonly Label[],
  later: readonly Label[],
): number {
  let minutes = 0;
  for (const rule of problem.rules) {
    if (rule.type !== 'gap' || rule.minutes <= minutes) continue;
    if (belongsTo(earlier, rule.earlier) && belongsTo(later, rule.later)) minutes = rule.minutes;
  }
  return minutes;
}

/**
 * Days that must lie between the day of a session with the labels `earlier` and that of a later one with the
 * labels `later`; 0 when no rule asks for any.
 */
export function gapDays(
  problem: PlanningProblem,
  earlier: readonly Label[],
  later: readonly Label[],
): number {
  let days = 0;
  for (const rule of problem.rules) {
    if (rule.type !== 'day-gap' || rule.days <= days) continue;
    if (belongsTo(earlier, rule.earlier) && belongsTo(later, rule.later)) days = rule.days;
  }
  return days;
}

/** Whether two sessions cannot both stand: they overlap, or the later one follows too soon. */
export function excludeEachOther(problem: PlanningProblem, a: TimedSession, b: TimedSession): boolean {
  if (a.start < b.end && b.start < a.end) return true;
  const [first, second] = a.start < b.start ? [a, b] : [b, a];
  if (second.day - first.day < gapDays(problem, first.labels, second.labels)) return true;
  return second.start - first.end < gapMinutes(problem, first.labels, second.labels);
}

/** Whether a block rule keeps a session of these labels out of this time. */
export function blockedByRule(problem: PlanningProblem, session: Omit<TimedSession, 'day'>): boolean {
  return problem.rules.some(
    (rule) =>
      rule.type === 'block' &&
      session.start < rule.to &&
      rule.from < session.end &&
      belongsTo(session.labels, rule.of),
  );
}
