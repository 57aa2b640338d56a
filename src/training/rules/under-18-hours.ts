import { isoDate } from '../../notation/time/iso-date';
import type { Finding } from '../finding';
import { athleteAge } from '../guardian-consent';
import { isHard, type SessionFacts } from '../session-facts';
import { sessionPlace } from '../session-place';
import { totalMinutes } from '../week-summary';
import type { WeekRule, WeekUnderCheck } from '../week-under-check';
import { message, minutesInWords } from '../wording';

/** Hours of hard training a week above which an athlete under 18 is watched. AOSSM, read where it is quoted. */
export const HARD_HOURS_UNDER_18 = 16;

interface Excess {
  readonly minutes: number;
  readonly template: string;
  readonly limit: number;
}

/** What is above a published caution; both are said by the same organisation, and each alone is a reason to watch. */
function excess(training: readonly SessionFacts[], week: WeekUnderCheck): Excess | undefined {
  const age = athleteAge(week.plan, isoDate(week.monday));
  const all = totalMinutes(training);
  const hard = totalMinutes(training.filter(isHard));
  if (hard > HARD_HOURS_UNDER_18 * 60)
    return {
      minutes: hard,
      limit: HARD_HOURS_UNDER_18,
      template:
        'Week {0} holds {1} of hard training; above {2} h a week, athletes under 18 are to be watched closely (AOSSM, read where it is quoted)',
    };
  if (age === undefined || all <= age * 60) return undefined;
  return {
    minutes: all,
    limit: age,
    template:
      'Week {0} holds {1} of training at {2} years of age; with more hours a week than years, athletes under 18 are to be watched closely (AOSSM, read where it is quoted)',
  };
}

function finding(week: WeekUnderCheck): readonly Finding[] {
  if (!week.plan.athlete?.minor) return [];
  const training = week.standing.filter((facts) => !facts.isRecovery);
  const last = training.at(-1);
  const found = excess(training, week);
  if (!last || !found) return [];
  return [
    {
      code: 'under-18-hours',
      severity: 'information',
      ...sessionPlace(last.session),
      message: message(found.template, week.week, minutesInWords(found.minutes), found.limit),
      facts: { week: week.week, minutes: found.minutes, limit: found.limit },
      related: [],
      remedies: [],
    },
  ];
}

/**
 * The week of an athlete under 18 holds more hours of training than years of age, where the journal says the day of
 * birth, or more than 16 h of hard training. Information: it is a published caution, and no rule of this journal.
 * Sessions of unknown length add nothing. It stands on the last training session of the week.
 *
 * A journal that breaks it:
 *
 *     journal.md
 *     #athlete "Swift" minor born:2014-05-03
 *     2026-02-23.md ... 2026-02-28.md
 *     - [x] #session skill 16:00 2h 5/10
 *
 * A journal that does not:
 *
 *     journal.md
 *     #athlete "Swift" minor born:2013-02-03
 *     2026-02-23.md ... 2026-02-28.md
 *     - [x] #session skill 16:00 2h 5/10
 */
export const under18Hours: WeekRule = { code: 'under-18-hours', check: finding };
