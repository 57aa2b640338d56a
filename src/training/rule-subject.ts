import type { JournalPlan } from '../journal/journal';
import { isKind } from './kinds';
import { isHard, type SessionFacts } from './session-facts';

/** What a rule is about. */
export type RuleSubject =
  | { readonly about: 'any' | 'hard' | 'rest-day' }
  | { readonly about: 'kind' | 'goal' | 'region'; readonly name: string };

/**
 * What the subject of a rule names: one of the notation's own words, else a kind, else a goal, else a region that a
 * routine lists. A word that is none of these is taken for a kind without a `#kind` line.
 */
export function ruleSubject(subject: string, plan: JournalPlan): RuleSubject {
  if (subject === 'any' || subject === 'hard' || subject === 'rest-day') return { about: subject };
  if (isKind(subject, plan.kinds)) return { about: 'kind', name: subject };
  if (plan.goals.has(subject)) return { about: 'goal', name: subject };
  for (const routine of plan.routines.values()) {
    if (routine.regions.includes(subject)) return { about: 'region', name: subject };
  }
  return { about: 'kind', name: subject };
}

/** Whether a session counts under a rule about `subject`; recovery is training only where its own kind is meant. */
export function isUnder(subject: RuleSubject, facts: SessionFacts): boolean {
  switch (subject.about) {
    case 'rest-day':
      return false;
    case 'any':
      return !facts.isRecovery;
    case 'hard':
      return isHard(facts);
    case 'kind':
      return facts.kinds.includes(subject.name);
    case 'goal':
      return facts.goals.includes(subject.name);
    case 'region':
      return facts.regions.includes(subject.name);
  }
}

/**
 * Whether a rule's gap is measured from and to a session: of a kind or region only when it is hard, for a goal and
 * `any` at every effort. Recovery breaks no gap.
 */
export function keepsGap(subject: RuleSubject, facts: SessionFacts): boolean {
  if (facts.isRecovery || !isUnder(subject, facts)) return false;
  return subject.about === 'kind' || subject.about === 'region' ? isHard(facts) : true;
}
