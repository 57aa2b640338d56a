import type { Finding } from '../finding';
import type { TimedSession } from '../gap';
import { related, sessionPlace } from '../session-place';
import { isToDo } from '../session-state';
import type { WeekRule } from '../week-under-check';
import { message, weekdayName } from '../wording';

/** Whether `later`, which does not start before `earlier`, starts before that one is over, or together with it. */
function overlaps(earlier: TimedSession, later: TimedSession): boolean {
  if (!earlier.times || !later.times) return false;
  return later.times.start < earlier.times.end || later.times.start === earlier.times.start;
}

function finding(earlier: TimedSession, later: TimedSession): Finding {
  const { session } = later.facts;
  const other = earlier.facts.session;
  const minutes = Math.min(
    (earlier.times?.end ?? 0) - (later.times?.start ?? 0),
    (later.times?.end ?? 0) - (later.times?.start ?? 0),
  );
  return {
    code: 'overlapping-sessions',
    severity: 'warning',
    ...sessionPlace(session),
    message:
      minutes > 0
        ? message(
            "{2} min of this session are also {0}'s {1} session; a body is in one place at a time",
            weekdayName(other.day),
            other.kind,
            Math.round(minutes),
          )
        : message(
            "This session starts together with {0}'s {1} session; a body is in one place at a time",
            weekdayName(other.day),
            other.kind,
          ),
    facts: { date: session.date, kind: session.kind, otherDate: other.date, otherKind: other.kind, minutes },
    related: [related(sessionPlace(other), message('The other session'))],
    remedies: isToDo(later.facts.state) ? ['move-to-legal-day', 'mark-skipped'] : [],
  };
}

/**
 * Two sessions that stand ask for the same time. It stands on the later one; a session without a time overlaps
 * nothing, and one may start at the minute when another ends.
 *
 * A journal that breaks it:
 *
 *     2026-02-26.md
 *     - [ ] #session strength 18:00 75min
 *     - [ ] #session skill 18:45-19:45 -- 30 min are also Thursday's strength session
 *
 * A journal that does not:
 *
 *     2026-02-26.md
 *     - [ ] #session strength 18:00 45min
 *     - [ ] #session skill 18:45-19:45
 */
export const overlappingSessions: WeekRule = {
  code: 'overlapping-sessions',
  check(week) {
    const before = week.before(1);
    const sessions = [...before, ...week.standing].map((facts) => week.timed(facts));
    return sessions.flatMap((later, index) => {
      if (index < before.length) return [];
      const earlier = sessions
        .slice(0, index)
        .filter((one) => overlaps(one, later))
        .at(-1);
      return earlier ? [finding(earlier, later)] : [];
    });
  },
};
