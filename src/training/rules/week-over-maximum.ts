import type { NotePlace } from '../../journal/note';
import type { PerWeek } from '../../notation/entries';
import { aboveMaximumWords } from '../amount-wording';
import type { Finding } from '../finding';
import { firstAbove } from '../per-week';
import { isUnder, type RuleSubject, ruleSubject } from '../rule-subject';
import type { SessionFacts } from '../session-facts';
import { entryPlace, related, sessionPlace } from '../session-place';
import { isToDo } from '../session-state';
import type { WeekRule, WeekUnderCheck } from '../week-under-check';
import { message } from '../wording';

interface Maximum {
  readonly by: 'rule' | 'need';
  readonly subject: RuleSubject;
  readonly name: string;
  readonly most: PerWeek;
  readonly sessions: readonly SessionFacts[];
  readonly place?: NotePlace;
}

function maxima(week: WeekUnderCheck): readonly Maximum[] {
  const rules = week.rules.flatMap((rule): Maximum[] => {
    if (!rule.max) return [];
    const subject = ruleSubject(rule.subject, week.plan);
    const sessions = week.standing.filter((facts) => isUnder(subject, facts));
    const place = rule.written ? { place: entryPlace(rule.written) } : {};
    return [{ by: 'rule', subject, name: rule.subject, most: rule.max, sessions, ...place }];
  });
  const needs = week.plan.needs.flatMap((need): Maximum[] => {
    if (!need.max) return [];
    const sessions = week.standing.filter((facts) => facts.countsFor.includes(need));
    const subject: RuleSubject = { about: 'kind', name: need.kind };
    return [{ by: 'need', subject, name: need.kind, most: need.max, sessions, place: entryPlace(need) }];
  });
  return [...rules, ...needs];
}

function finding(maximum: Maximum, week: WeekUnderCheck): readonly Finding[] {
  const above = firstAbove(maximum.most, maximum.sessions);
  if (!above) return [];
  const { session, held, allowed } = above;
  const countedIn = maximum.most.count === undefined ? 'minutes' : 'sessions';
  return [
    {
      code: 'week-over-maximum',
      severity: 'warning',
      ...sessionPlace(session.session),
      message: aboveMaximumWords(maximum.subject, { countedIn, held, allowed }, week.week, maximum.by),
      facts: { week: week.week, subject: maximum.name, askedBy: maximum.by, countedIn, held, allowed },
      related: maximum.place ? [related(maximum.place, message(`The ${maximum.by} with the maximum`))] : [],
      remedies: isToDo(session.state) ? ['move-to-legal-day', 'turn-into-recovery', 'mark-skipped'] : [],
    },
  ];
}

/**
 * A week holds more sessions, or minutes, than a rule or a need allows. It stands on the first session above.
 *
 * A journal that breaks it:
 *
 *     journal.md
 *     - #rule skill max:1/week
 *     2026-02-23.md
 *     - [x] #session skill 18:00 60min
 *     2026-02-27.md
 *     - [ ] #session skill 18:00 60min -- 2 skill sessions; the rule allows 1
 *
 * A journal that does not:
 *
 *     journal.md
 *     - #rule skill max:1/week
 *     2026-02-23.md
 *     - [ ] #session skill 18:00 60min skipped:ill
 *     2026-02-27.md
 *     - [ ] #session skill 18:00 60min
 */
export const weekOverMaximum: WeekRule = {
  code: 'week-over-maximum',
  check: (week) => maxima(week).flatMap((maximum) => finding(maximum, week)),
};
