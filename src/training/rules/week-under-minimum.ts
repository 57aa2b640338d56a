import type { NotePath } from '../../journal/note';
import type { PerWeek } from '../../notation/entries';
import type { SourceRange } from '../../notation/source-range';
import type { LengthOfTime } from '../../notation/time/length-of-time';
import { belowMinimumWords } from '../amount-wording';
import { askedOfWeek } from '../block/asked-in-week';
import type { Finding } from '../finding';
import { kindsOf } from '../kinds';
import { weekShortfall } from '../per-week';
import { isUnder, type RuleSubject, ruleSubject } from '../rule-subject';
import type { SessionFacts } from '../session-facts';
import { tagRange } from '../session-place';
import { weekRoom } from '../week-room';
import type { WeekRule, WeekUnderCheck } from '../week-under-check';

interface Minimum {
  readonly by: 'rule' | 'need';
  readonly subject: RuleSubject;
  readonly name: string;
  readonly goal?: string;
  readonly least: PerWeek;
  readonly length?: LengthOfTime;
  readonly sessions: readonly SessionFacts[];
  readonly note: NotePath;
  readonly range: SourceRange;
}

function neededMinima(week: WeekUnderCheck): readonly Minimum[] {
  return week.needs.map((need) => {
    const { perWeek, length } = askedOfWeek(week.plan, need, week.week);
    return {
      by: 'need',
      subject: { about: 'kind', name: need.kind },
      name: need.kind,
      ...(need.goal === undefined ? {} : { goal: need.goal }),
      least: perWeek,
      ...(length ? { length } : {}),
      sessions: week.standing.filter((facts) => facts.countsFor.includes(need)),
      note: need.note,
      range: need.entry.perWeek?.range ?? tagRange(need.entry),
    };
  });
}

function ruledMinima(week: WeekUnderCheck): readonly Minimum[] {
  return week.rules.flatMap((rule): Minimum[] => {
    const { written, min } = rule;
    if (!written || !min || rule.subject === 'recovery' || rule.subject === 'rest-day') return [];
    const subject = ruleSubject(rule.subject, week.plan);
    return [
      {
        by: 'rule',
        subject,
        name: rule.subject,
        least: min,
        sessions: week.standing.filter((facts) => isUnder(subject, facts)),
        note: written.note,
        range: written.entry.min?.range ?? tagRange(written.entry),
      },
    ];
  });
}

function finding(minimum: Minimum, week: WeekUnderCheck): readonly Finding[] {
  const shortfall = weekShortfall(minimum.least, minimum.sessions, minimum.length);
  if (!shortfall) return [];
  const room = weekRoom(week, minimum.sessions, shortfall.missingSessions);
  const { countedIn, held, asked, missingSessions } = shortfall;
  const isRecovery = kindsOf(minimum.name, week.plan.kinds).includes('recovery');
  return [
    {
      code: 'week-under-minimum',
      severity: room.hasRoom ? 'information' : 'warning',
      note: minimum.note,
      range: minimum.range,
      message: belowMinimumWords(minimum.subject, shortfall, week.week, room),
      facts: {
        week: week.week,
        subject: minimum.name,
        askedBy: minimum.by,
        ...(minimum.goal === undefined ? {} : { goal: minimum.goal }),
        countedIn,
        held,
        asked,
        missingSessions,
        daysLeft: room.daysLeft,
      },
      related: [],
      remedies: isRecovery && !room.isOver ? ['add-recovery-session'] : [],
    },
  ];
}

/**
 * A week holds fewer sessions, or minutes, than a need or a rule asks for: information while the open days left
 * can hold what is missing, warning when they no longer can. It stands on the number that asks, one a week.
 *
 * A journal that breaks it, on Wednesday 2026-02-25:
 *
 *     journal.md
 *     - #need strength 2/week 60min -- 1 of the 2; still room on 5 days
 *     2026-02-23.md
 *     - [x] #session strength 18:30 60min
 *
 * A journal that does not:
 *
 *     journal.md
 *     - #need strength 2/week 60min
 *     2026-02-23.md
 *     - [x] #session strength 18:30 60min
 *     2026-02-27.md
 *     - [ ] #session strength 18:30 60min
 */
export const weekUnderMinimum: WeekRule = {
  code: 'week-under-minimum',
  check: (week) =>
    week.canMiss
      ? [...neededMinima(week), ...ruledMinima(week)].flatMap((minimum) => finding(minimum, week))
      : [],
};
