import type { Rule } from '../default-rules';
import type { Finding } from '../finding';
import { isUnder, type RuleSubject, ruleSubject } from '../rule-subject';
import type { SessionFacts } from '../session-facts';
import { entryPlace, related, sessionPlace } from '../session-place';
import { isToDo } from '../session-state';
import { totalMinutes } from '../week-summary';
import type { WeekRule, WeekUnderCheck } from '../week-under-check';
import { lengthInWords, message, minutesInWords, weekdayName } from '../wording';

function whatIsCapped(subject: RuleSubject): string {
  switch (subject.about) {
    case 'kind':
      return '{0} of {3} on {1}';
    case 'goal':
      return '{0} for {3} on {1}';
    case 'region':
      return '{0} that load {3} on {1}';
    case 'hard':
      return '{0} of hard training on {1}';
    default:
      return '{0} of training on {1}';
  }
}

/** The session with which the day's time goes above the cap. */
function crossing(sessions: readonly SessionFacts[], cap: number): SessionFacts | undefined {
  let minutes = 0;
  return sessions.find((facts) => {
    minutes += facts.minutes ?? 0;
    return minutes > cap;
  });
}

function finding(rule: Rule, day: readonly SessionFacts[], week: WeekUnderCheck): readonly Finding[] {
  if (!rule.cap) return [];
  const subject = ruleSubject(rule.subject, week.plan);
  const sessions = day.filter((facts) => isUnder(subject, facts));
  const over = crossing(sessions, rule.cap.minutes);
  if (!over) return [];
  const { session } = over;
  const minutes = totalMinutes(sessions);
  return [
    {
      code: 'day-over-cap',
      severity: 'warning',
      ...sessionPlace(session),
      message: message(
        `${whatIsCapped(subject)}; the rule caps a day at {2}`,
        minutesInWords(minutes),
        weekdayName(session.day),
        lengthInWords(rule.cap),
        rule.subject,
      ),
      facts: { date: session.date, subject: rule.subject, minutes, cap: rule.cap.minutes },
      related: rule.written ? [related(entryPlace(rule.written), message('The rule with the cap'))] : [],
      remedies: isToDo(over.state) ? ['move-to-legal-day', 'swap-with-another-day', 'mark-skipped'] : [],
    },
  ];
}

/**
 * A day holds more training time than a rule's `cap:`; recovery is no training time, unless the rule is about it. It
 * stands on the session that takes the day over. A session that says no length adds nothing.
 *
 * A journal that breaks it:
 *
 *     journal.md
 *     - #rule any cap:2h
 *     2026-02-26.md
 *     - [ ] #session strength 18:00 75min
 *     - [ ] #session skill 19:30 60min -- 2 h 15 min of training on Thursday
 *
 * A journal that does not:
 *
 *     journal.md
 *     - #rule any cap:2h
 *     2026-02-26.md
 *     - [ ] #session strength 18:00 60min
 *     - [ ] #session skill 19:30 60min
 */
export const dayOverCap: WeekRule = {
  code: 'day-over-cap',
  check(week) {
    const days = new Set(week.standing.map((facts) => facts.session.day));
    return [...days].flatMap((day) => {
      const sessions = week.standing.filter((facts) => facts.session.day === day);
      return week.rules.flatMap((rule) => finding(rule, sessions, week));
    });
  },
};
