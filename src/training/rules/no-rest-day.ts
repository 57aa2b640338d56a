import type { Rule } from '../default-rules';
import type { Finding } from '../finding';
import type { SessionFacts } from '../session-facts';
import { entryPlace, related, sessionPlace } from '../session-place';
import { isToDo } from '../session-state';
import type { WeekRule, WeekUnderCheck } from '../week-under-check';
import { message } from '../wording';

/** Days of training from today on whose sessions are all still to do: each could be kept free. */
function daysToFree(training: readonly SessionFacts[], week: WeekUnderCheck): number {
  const days = new Set(training.map((facts) => facts.session.day));
  return [...days].filter(
    (day) =>
      day >= week.todayNumber && training.every((facts) => facts.session.day !== day || isToDo(facts.state)),
  ).length;
}

function finding(rule: Rule, week: WeekUnderCheck): readonly Finding[] {
  const training = week.standing.filter((facts) => !facts.isRecovery);
  const last = training.at(-1);
  const asked = rule.min?.count;
  if (asked === undefined || !last) return [];
  const held = 7 - new Set(training.map((facts) => facts.session.day)).size;
  if (held >= asked) return [];
  const canFree = daysToFree(training, week);
  const canMend = held + canFree >= asked;
  const amounts =
    asked === 1
      ? 'Week {2} has training on every day, and {1} rest day is asked for'
      : 'Week {2} keeps {0} of the {1} rest days asked for';
  const room =
    canFree === 1
      ? '{3} day of training could still be left out'
      : '{3} days of training could still be left out';
  return [
    {
      code: 'no-rest-day',
      severity: canMend ? 'information' : 'warning',
      ...sessionPlace(last.session),
      message: message(canMend ? `${amounts}; ${room}` : amounts, held, asked, week.week, canFree),
      facts: { week: week.week, held, asked, canFree },
      related: rule.written ? [related(entryPlace(rule.written), message('The rule that asks for it'))] : [],
      remedies: isToDo(last.state) ? ['turn-into-recovery', 'mark-skipped', 'move-to-legal-day'] : [],
    },
  ];
}

/**
 * A week keeps fewer days free of training than a rule asks for, one by default; a day with nothing but recovery is
 * free. Information while enough days of training from today on are still to do, warning when not. It stands on
 * the last training session of the week.
 *
 * A journal that breaks it has a session other than recovery, none of them skipped, on each of the seven days:
 *
 *     2026-02-23.md ... 2026-03-01.md
 *     - [x] #session conditioning 18:30 45min 5/10
 *
 * A journal that does not:
 *
 *     2026-02-23.md ... 2026-02-28.md
 *     - [x] #session conditioning 18:30 45min 5/10
 *     2026-03-01.md
 *     - [x] #session recovery 17:00 45min
 */
export const noRestDay: WeekRule = {
  code: 'no-rest-day',
  check(week) {
    const rules = week.rules.filter((rule) => rule.subject === 'rest-day');
    return rules.flatMap((rule) => finding(rule, week)).slice(0, 1);
  },
};
