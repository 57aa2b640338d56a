import { belowMinimumWords } from '../amount-wording';
import type { Rule } from '../default-rules';
import type { Finding } from '../finding';
import { weekShortfall } from '../per-week';
import { entryPlace, related, sessionPlace } from '../session-place';
import { isToDo } from '../session-state';
import { weekRoom } from '../week-room';
import type { WeekRule, WeekUnderCheck } from '../week-under-check';
import { message } from '../wording';

function finding(rule: Rule, week: WeekUnderCheck): readonly Finding[] {
  const last = week.standing.at(-1);
  if (!rule.min || !last) return [];
  const recovery = week.standing.filter((facts) => facts.isRecovery);
  const shortfall = weekShortfall(rule.min, recovery);
  if (!shortfall) return [];
  const room = weekRoom(week, recovery, shortfall.missingSessions);
  const canTurn = isToDo(last.state) && !last.isRecovery;
  return [
    {
      code: 'no-recovery-session',
      severity: room.hasRoom ? 'information' : 'warning',
      ...sessionPlace(last.session),
      message: belowMinimumWords({ about: 'kind', name: 'recovery' }, shortfall, week.week, room),
      facts: {
        week: week.week,
        countedIn: shortfall.countedIn,
        held: shortfall.held,
        asked: shortfall.asked,
        daysLeft: room.daysLeft,
      },
      related: rule.written ? [related(entryPlace(rule.written), message('The rule that asks for it'))] : [],
      remedies: [
        ...(room.isOver ? [] : (['add-recovery-session'] as const)),
        ...(canTurn ? (['turn-into-recovery'] as const) : []),
      ],
    },
  ];
}

/**
 * A week with training in it lacks the recovery that a rule asks for, one session by default. Information while an
 * open day left can hold it, warning when none can. It stands on the last session of the week.
 *
 * A journal that breaks it:
 *
 *     2026-02-23.md
 *     - [x] #session flexibility 18:30 75min 6/10 -- holds no recovery session, and 1 is asked for
 *
 * A journal that does not:
 *
 *     2026-02-23.md
 *     - [x] #session flexibility 18:30 75min 6/10
 *     2026-03-01.md
 *     - [ ] #session recovery 11:00 45min
 */
export const noRecoverySession: WeekRule = {
  code: 'no-recovery-session',
  check(week) {
    if (!week.canMiss || !week.standing.some((facts) => !facts.isRecovery)) return [];
    const found = week.rules
      .filter((rule) => rule.subject === 'recovery')
      .flatMap((rule) => finding(rule, week));
    return found.slice(0, 1);
  },
};
