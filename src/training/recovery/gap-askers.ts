import type { JournalPlan } from '../../journal/journal';
import type { LengthOfTime } from '../../notation/time/length-of-time';
import type { Rule } from '../default-rules';
import { keepsGap, ruleSubject } from '../rule-subject';
import type { SessionFacts } from '../session-facts';
import { GAP_STEP_HOURS } from './gap-suggestion';
import { type RecoverySubject, trains } from './recovery-subject';
import type { SessionPair } from './session-pairs';

/** Something that wants sessions apart: a rule, a need, or soreness that the notes tell of. */
export interface GapAsker {
  readonly by: 'rule' | 'need' | 'soreness';
  readonly asked: LengthOfTime;
  /** Whether it is about this session. */
  keeps(facts: SessionFacts): boolean;
}

/** The gaps that rules and needs ask for. */
export function writtenAskers(rules: readonly Rule[], plan: JournalPlan): readonly GapAsker[] {
  return [
    ...rules.flatMap((rule): GapAsker[] => {
      if (!rule.gap) return [];
      const subject = ruleSubject(rule.subject, plan);
      return [{ by: 'rule', asked: rule.gap, keeps: (facts) => keepsGap(subject, facts) }];
    }),
    ...plan.needs.flatMap((need): GapAsker[] =>
      need.gap ? [{ by: 'need', asked: need.gap, keeps: (facts) => facts.countsFor.includes(need) }] : [],
    ),
  ];
}

/**
 * What a sore pair asks: more than the gap after which it was still sore, half a day more, or a day more where days
 * were counted. No source.
 */
export function sorenessAsker(subject: RecoverySubject, pair: SessionPair): GapAsker {
  const inDays = pair.countedIn === 'days';
  const hours = pair.hours + (inDays ? 24 : GAP_STEP_HOURS);
  return {
    by: 'soreness',
    asked: { minutes: 60 * hours, unit: inDays ? 'd' : 'h' },
    keeps: (facts) => trains(facts, subject),
  };
}
