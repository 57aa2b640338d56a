/** What the sessions that stand already break among themselves. */
import type { BrokenByStanding } from './plan';
import { belongsTo, type PlanningProblem, type Rule, type StandingSession, weekOfDay } from './problem';

/**
 * Finds the rules that always hold and that standing sessions break without any session of the plan.
 * Sessions before the horizon are past: what they break among themselves does not count.
 */
export function brokenByStanding(problem: PlanningProblem): readonly BrokenByStanding[] {
  const sessions = [...problem.standing].sort((a, b) => a.start - b.start);
  return [...overlaps(sessions), ...problem.rules.flatMap((rule) => broken(rule, sessions))];
}

/** Pairs of which at least one lies within the horizon, the earlier first. */
function pairsOf(sessions: readonly StandingSession[]): [StandingSession, StandingSession][] {
  return sessions.flatMap((earlier, index) =>
    sessions
      .slice(index + 1)
      .filter((later) => later.day >= 0)
      .map((later): [StandingSession, StandingSession] => [earlier, later]),
  );
}

function overlaps(sessions: readonly StandingSession[]): BrokenByStanding[] {
  return pairsOf(sessions)
    .filter(([earlier, later]) => later.start < earlier.end)
    .map(([earlier, later]) => ({ rule: undefined, sessions: [earlier.id, later.id] }));
}

function broken(rule: Rule, sessions: readonly StandingSession[]): BrokenByStanding[] {
  const found = (list: readonly StandingSession[]): BrokenByStanding => ({
    rule: rule.id,
    sessions: list.map((session) => session.id),
  });
  const inHorizon = sessions.filter((session) => session.day >= 0);
  switch (rule.type) {
    case 'gap':
      return pairsOf(sessions)
        .filter(
          ([earlier, later]) =>
            belongsTo(earlier.labels, rule.earlier) &&
            belongsTo(later.labels, rule.later) &&
            later.start - earlier.end < rule.minutes,
        )
        .map(found);
    case 'day-gap':
      return pairsOf(sessions)
        .filter(
          ([earlier, later]) =>
            belongsTo(earlier.labels, rule.earlier) &&
            belongsTo(later.labels, rule.later) &&
            later.day - earlier.day < rule.days,
        )
        .map(found);
    case 'block':
      return inHorizon
        .filter(
          (session) =>
            belongsTo(session.labels, rule.of) && session.start < rule.to && rule.from < session.end,
        )
        .map((session) => found([session]));
    case 'cap':
      return groups(inHorizon, rule.of, (session) => session.day)
        .filter((list) => list.reduce((sum, { start, end }) => sum + end - start, 0) > rule.minutes)
        .map(found);
    case 'count':
      return groups(inHorizon, rule.of, (session) => weekOfDay(session.day))
        .filter((list) => list.length > (rule.max ?? Infinity))
        .map(found);
    case 'rest':
      return groups(inHorizon, rule.of, (session) => weekOfDay(session.day))
        .filter((list) => rule.required && new Set(list.map(({ day }) => day)).size > 7 - rule.days)
        .map(found);
    case 'air':
    case 'row':
      return [];
  }
}

/** The sessions of a class, grouped. */
function groups(
  sessions: readonly StandingSession[],
  of: readonly string[],
  keyOf: (session: StandingSession) => number,
): StandingSession[][] {
  const byKey = new Map<number, StandingSession[]>();
  for (const session of sessions) {
    if (!belongsTo(session.labels, of)) continue;
    const key = keyOf(session);
    byKey.set(key, [...(byKey.get(key) ?? []), session]);
  }
  return [...byKey.values()];
}
