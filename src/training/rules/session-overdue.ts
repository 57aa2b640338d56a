import { sessionPlace } from '../session-place';
import type { WeekRule } from '../week-under-check';
import { message } from '../wording';

/**
 * A planned session lies in the past and nothing says what became of it.
 *
 * A journal that breaks it, on 2026-02-25:
 *
 *     2026-02-23.md
 *     - [ ] #session flexibility 18:30 75min
 *
 * A journal that does not:
 *
 *     2026-02-23.md
 *     - [ ] #session flexibility 18:30 75min skipped:work
 *     2026-02-25.md
 *     - [ ] #session strength 18:30 60min
 */
export const sessionOverdue: WeekRule = {
  code: 'session-overdue',
  check: (week) =>
    week.standing
      .filter((facts) => facts.state === 'overdue')
      .map(({ session }) => {
        const days = week.todayNumber - session.day;
        return {
          code: 'session-overdue',
          severity: 'warning',
          ...sessionPlace(session),
          message: message(
            days === 1
              ? 'The {0} session of {1} was planned for yesterday; tick it, skip it with a reason, or move it'
              : 'The {0} session of {1} was planned {2} days ago; tick it, skip it with a reason, or move it',
            session.kind,
            session.date,
            days,
          ),
          facts: { date: session.date, kind: session.kind, days },
          related: [],
          remedies: ['tick-as-done', 'mark-skipped', 'move-to-legal-day'],
        };
      }),
};
