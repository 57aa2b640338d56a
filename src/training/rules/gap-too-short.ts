import type { NotePlace } from '../../journal/note';
import type { LengthOfTime } from '../../notation/time/length-of-time';
import type { Finding } from '../finding';
import { type Gap, gapBetween, missingMinutes } from '../gap';
import { keepsGap, ruleSubject } from '../rule-subject';
import type { SessionFacts } from '../session-facts';
import { entryPlace, related, sessionPlace } from '../session-place';
import { isToDo } from '../session-state';
import type { WeekRule, WeekUnderCheck } from '../week-under-check';
import { lengthInWords, message, minutesInWords, weekdayName } from '../wording';

/** A rule or a need that keeps sessions apart. */
interface GapAsker {
  readonly by: 'rule' | 'need';
  /** What the rule is about, or the kind that is needed. */
  readonly subject: string;
  readonly asked: LengthOfTime;
  readonly place?: NotePlace;
  /** Whether the gap is measured from and to this session. */
  keeps(facts: SessionFacts): boolean;
}

/** Two sessions, and the asker whose gap between them falls shortest. */
interface ShortGap {
  readonly earlier: SessionFacts;
  readonly asker: GapAsker;
  readonly gap: Gap;
}

function askers(week: WeekUnderCheck): readonly GapAsker[] {
  const rules = week.rules.flatMap((rule): GapAsker[] => {
    if (!rule.gap) return [];
    const subject = ruleSubject(rule.subject, week.plan);
    return [
      {
        by: 'rule',
        subject: rule.subject,
        asked: rule.gap,
        ...(rule.written ? { place: entryPlace(rule.written) } : {}),
        keeps: (facts) => keepsGap(subject, facts),
      },
    ];
  });
  const needs = week.plan.needs.flatMap((need): GapAsker[] =>
    need.gap
      ? [
          {
            by: 'need',
            subject: need.kind,
            asked: need.gap,
            place: entryPlace(need),
            keeps: (facts) => facts.countsFor.includes(need),
          },
        ]
      : [],
  );
  return [...rules, ...needs];
}

/** For each earlier session that is too close to `later`, the asker that misses most. */
function shortGaps(
  later: SessionFacts,
  earlierOnes: readonly SessionFacts[],
  all: readonly GapAsker[],
  week: WeekUnderCheck,
): readonly ShortGap[] {
  const shortest = new Map<SessionFacts, ShortGap>();
  for (const asker of all) {
    if (!asker.keeps(later)) continue;
    const earlier = earlierOnes.filter((facts) => asker.keeps(facts)).at(-1);
    if (!earlier) continue;
    const gap = gapBetween(week.timed(earlier), week.timed(later), asker.asked);
    const missing = missingMinutes(gap);
    const known = shortest.get(earlier);
    if (missing > (known ? missingMinutes(known.gap) : 0)) shortest.set(earlier, { earlier, asker, gap });
  }
  return [...shortest.values()];
}

function distanceTemplate(gap: Gap): string {
  if (gap.countedIn === 'minutes') return '{0} after ';
  if (gap.amount === 0) return 'On the same day as ';
  return gap.amount === 1 ? '{0} day after ' : '{0} days after ';
}

function finding(later: SessionFacts, short: ShortGap, week: WeekUnderCheck): Finding {
  const { earlier, asker, gap } = short;
  const { session } = later;
  const before = earlier.session;
  const sameWeek = before.day >= week.monday;
  const template = `${distanceTemplate(gap)}${sameWeek ? "{1}'s {2} session" : 'the {2} session of {1}'}; the ${asker.by} asks {3}`;
  return {
    code: 'gap-too-short',
    severity: 'warning',
    ...sessionPlace(session),
    message: message(
      template,
      gap.countedIn === 'minutes' ? minutesInWords(gap.amount) : gap.amount,
      sameWeek ? weekdayName(before.day) : before.date,
      before.kind,
      lengthInWords(asker.asked),
    ),
    facts: {
      date: session.date,
      kind: session.kind,
      earlierDate: before.date,
      earlierKind: before.kind,
      askedBy: asker.by,
      subject: asker.subject,
      countedIn: gap.countedIn,
      amount: gap.amount,
      asked: gap.asked,
    },
    related: [
      related(sessionPlace(before), message('The earlier {0} session, {1}', before.kind, before.date)),
      ...(asker.place ? [related(asker.place, message(`The ${asker.by} that asks for the gap`))] : []),
    ],
    remedies: isToDo(later.state)
      ? ['move-to-legal-day', 'swap-with-another-day', 'turn-into-recovery', 'mark-skipped']
      : [],
  };
}

/**
 * Sessions that a rule or a need wants apart stand too close together. Each session is held against the nearest
 * earlier one that the rule is about, which may lie in a week before; of several rules between the same two
 * sessions the one that misses most is told.
 *
 * A journal that breaks it:
 *
 *     2026-02-24.md
 *     - [x] #session flexibility 18:30 75min 8/10
 *     2026-02-25.md
 *     - [ ] #session flexibility 18:30 75min 7/10 -- 22 h 45 min after Tuesday's; the rule asks 48 h
 *
 * A journal that does not:
 *
 *     2026-02-24.md
 *     - [x] #session flexibility 18:30 75min 8/10
 *     2026-02-25.md
 *     - [ ] #session flexibility 18:30 75min 5/10 -- not hard
 *     2026-02-27.md
 *     - [ ] #session flexibility 18:30 75min 7/10
 */
export const gapTooShort: WeekRule = {
  code: 'gap-too-short',
  check(week) {
    const all = askers(week);
    const longest = Math.max(0, ...all.map((asker) => asker.asked.minutes));
    const sessions = [...week.before(Math.ceil(longest / 1440) + 1), ...week.standing];
    const first = sessions.length - week.standing.length;
    return week.standing.flatMap((later, index) =>
      shortGaps(later, sessions.slice(0, first + index), all, week).map((short) =>
        finding(later, short, week),
      ),
    );
  },
};
