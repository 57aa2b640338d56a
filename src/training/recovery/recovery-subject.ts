import type { JournalPlan, Need } from '../../journal/journal';
import type { NotePlace } from '../../journal/note';
import type { Rule } from '../default-rules';
import { loads } from '../open-pain';
import type { SessionFacts } from '../session-facts';
import { tagRange } from '../session-place';

/** What needs time to recover: the sessions of a kind, or a region that sessions train. */
export interface RecoverySubject {
  readonly about: 'kind' | 'region';
  readonly name: string;
}

/** The gap that is kept at present for a subject. */
export interface CurrentGap {
  readonly hours: number;
  /** A written rule, the rule that every journal starts with, or a need's own gap. */
  readonly by: 'rule' | 'default' | 'need';
  /** The rule that says it, when one does. */
  readonly rule?: Rule;
  /** The need that says it, when no rule does. */
  readonly need?: Need;
}

/** The `gap:` that is kept, as it is written; `undefined` for a default or none. */
export function currentPlace(current: CurrentGap | undefined): NotePlace | undefined {
  const written = current?.rule?.written ?? current?.need;
  return written && { note: written.note, range: written.entry.gap?.range ?? tagRange(written.entry) };
}

/** Whether a session trains the subject. Recovery trains nothing. */
export function trains(facts: SessionFacts, { about, name }: RecoverySubject): boolean {
  if (facts.isRecovery) return false;
  return about === 'kind' ? facts.kinds.includes(name) : facts.regions.some((region) => loads(region, name));
}

/** The kinds and then the regions that the sessions train, each in order of name. */
export function recoverySubjects(sessions: readonly SessionFacts[]): readonly RecoverySubject[] {
  const training = sessions.filter(({ isRecovery }) => !isRecovery);
  const kinds = new Set(training.flatMap((facts) => facts.kinds));
  const regions = new Set(training.flatMap((facts) => facts.regions));
  return [
    ...[...kinds].sort().map((name) => ({ about: 'kind', name }) as const),
    ...[...regions].sort().map((name) => ({ about: 'region', name }) as const),
  ];
}

/** The longest gap that a rule about exactly this subject asks, else the longest of the needs of this kind. */
export function currentGap(
  { about, name }: RecoverySubject,
  rules: readonly Rule[],
  plan: JournalPlan,
): CurrentGap | undefined {
  const ruled = rules.flatMap((rule): CurrentGap[] =>
    rule.gap && rule.subject === name
      ? [{ hours: rule.gap.minutes / 60, by: rule.written ? 'rule' : 'default', rule }]
      : [],
  );
  const needed = plan.needs.flatMap((need): CurrentGap[] =>
    about === 'kind' && need.kind === name && need.gap
      ? [{ hours: need.gap.minutes / 60, by: 'need', need }]
      : [],
  );
  const longest = (gaps: readonly CurrentGap[]) => [...gaps].sort((one, other) => other.hours - one.hours)[0];
  return longest(ruled) ?? longest(needed);
}
