import type { Finding } from '../finding';
import { sessionPlace } from '../session-place';
import type { WeekRule, WeekUnderCheck } from '../week-under-check';
import { message } from '../wording';

/** Days of training a week. AAP (2000), read on a page that reports it. */
export const MOST_DAYS_UNDER_18 = 5;

function finding(week: WeekUnderCheck): readonly Finding[] {
  if (!week.plan.athlete?.minor) return [];
  const training = week.standing.filter((facts) => !facts.isRecovery);
  const last = training.at(-1);
  const days = new Set(training.map(({ session }) => session.day)).size;
  if (!last || days <= MOST_DAYS_UNDER_18) return [];
  return [
    {
      code: 'under-18-rest',
      severity: 'information',
      ...sessionPlace(last.session),
      message: message(
        'Week {0} has training on {1} days; for athletes under 18 at most {2} days a week in one sport and at least one day off are asked for (AAP 2000, as reported)',
        week.week,
        days,
        MOST_DAYS_UNDER_18,
      ),
      facts: { week: week.week, days, most: MOST_DAYS_UNDER_18 },
      related: [],
      remedies: [],
    },
  ];
}

/**
 * The week of an athlete under 18 has training on more than five days; a day with nothing but recovery is free.
 * Information: it is a published caution, and no rule of this journal. It stands on the last training session of the
 * week.
 *
 * A journal that breaks it:
 *
 *     journal.md
 *     #athlete "Swift" minor
 *     2026-02-23.md ... 2026-02-28.md
 *     - [x] #session skill 16:00 45min 4/10
 *
 * A journal that does not:
 *
 *     journal.md
 *     #athlete "Swift" minor
 *     2026-02-23.md ... 2026-02-27.md
 *     - [x] #session skill 16:00 45min 4/10
 *     2026-02-28.md
 *     - [x] #session recovery 16:00 30min
 */
export const under18Rest: WeekRule = { code: 'under-18-rest', check: finding };
