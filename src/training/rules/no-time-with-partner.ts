import type { Finding } from '../finding';
import type { SessionFacts } from '../session-facts';
import { sessionPlace } from '../session-place';
import type { WeekRule, WeekUnderCheck } from '../week-under-check';
import { message } from '../wording';

/** So many days before the session it is said. Common practice, no source. */
const daysAhead = 7;

function finding({ session }: SessionFacts, { todayNumber }: WeekUnderCheck): Finding {
  const names = session.entry.with.map(({ value }) => value).join(', ');
  const days = session.day - todayNumber;
  const when = days === 0 ? 'today' : days === 1 ? 'tomorrow' : 'in {3} days';
  return {
    code: 'no-time-with-partner',
    severity: 'information',
    ...sessionPlace(session),
    message: message(
      `The {0} session with {1} is ${when} ({2}) and has no time yet; agree on one and write it down`,
      session.kind,
      names,
      session.date,
      days,
    ),
    facts: { date: session.date, kind: session.kind, with: names, days },
    related: [],
    remedies: [],
  };
}

/**
 * A session with somebody stands in the next seven days and says no time: it is not agreed upon.
 *
 * A journal that breaks it, on 2026-02-25:
 *
 *     2026-02-28.md
 *     - [ ] #session skill 45min with:juno
 *
 * A journal that does not:
 *
 *     2026-02-28.md
 *     - [ ] #session skill 18:00 45min with:juno
 */
export const noTimeWithPartner: WeekRule = {
  code: 'no-time-with-partner',
  check: (week) =>
    week.standing
      .filter(
        ({ state, session }) =>
          state === 'planned' &&
          session.day <= week.todayNumber + daysAhead &&
          session.entry.with.length > 0 &&
          session.entry.span === undefined,
      )
      .map((facts) => finding(facts, week)),
};
