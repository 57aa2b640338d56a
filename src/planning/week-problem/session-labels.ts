import type { JournalPlan, Need } from '../../journal/journal';
import type { RuleSubject } from '../../training/rule-subject';
import { isHard, type SessionFacts } from '../../training/session-facts';
import type { Label, SessionClass } from '../solver/problem';

/** Effort 7 and above, recovery never. */
export const hard: Label = 'hard';
/** Everything but recovery. */
export const training: Label = 'training';
/** Sessions with and without a time: between the former hours are counted, otherwise days. */
export const timed: Label = 'timed';
export const timeless: Label = 'timeless';

/** Sessions of a kind, or of one that is like it. */
export const ofKind = (kind: string): Label => `kind:${kind}`;
const ofGoal = (goal: string): Label => `goal:${goal}`;
export const ofRegion = (region: string): Label => `region:${region}`;
/** Sessions of a week, 0 for the first of the horizon. */
export const ofWeek = (week: number): Label => `week:${week}`;

/** Sessions that count for a need. */
export function ofNeed(need: Need, plan: JournalPlan): Label {
  return `need:${plan.needs.indexOf(need)}`;
}

/** All that a rule can ask of a session. */
export function labelsOf(facts: SessionFacts, plan: JournalPlan, week: number): readonly Label[] {
  return [
    ...facts.kinds.map(ofKind),
    ...facts.goals.map(ofGoal),
    ...facts.regions.map(ofRegion),
    ...facts.countsFor.map((need) => ofNeed(need, plan)),
    ...(facts.isRecovery ? [] : [training]),
    ...(isHard(facts) ? [hard] : []),
    facts.session.entry.span ? timed : timeless,
    ofWeek(week),
  ];
}

/**
 * The sessions that a rule about `subject` counts, as `isUnder` of the training layer does; `undefined` for rest days,
 * which count none.
 */
export function classUnder(subject: RuleSubject): SessionClass | undefined {
  switch (subject.about) {
    case 'rest-day':
      return undefined;
    case 'any':
      return [training];
    case 'hard':
      return [hard];
    case 'kind':
      return [ofKind(subject.name)];
    case 'goal':
      return [ofGoal(subject.name)];
    case 'region':
      return [ofRegion(subject.name)];
  }
}

/** The sessions between which a rule about `subject` measures its gap, as `keepsGap` of the training layer does. */
export function classKeepingGap(subject: RuleSubject): SessionClass | undefined {
  const under = classUnder(subject);
  if (!under) return undefined;
  return subject.about === 'goal' ? [...under, training] : [...new Set([...under, hardOrAny(subject)])];
}

function hardOrAny({ about }: RuleSubject): Label {
  return about === 'any' ? training : hard;
}
