import type { JournalPlan, WrittenRule } from '../journal/journal';
import type { PerWeek } from '../notation/entries';
import type { LengthOfTime } from '../notation/time/length-of-time';

/** A rule that holds in a journal, written there or not. */
export interface Rule {
  /** A kind, a goal id, a region, `hard`, `rest-day`, `recovery` or `any`. */
  readonly subject: string;
  readonly gap?: LengthOfTime;
  readonly min?: PerWeek;
  readonly max?: PerWeek;
  /** Training time a day. */
  readonly cap?: LengthOfTime;
  /** The line that says it; a default has none. */
  readonly written?: WrittenRule;
}

const twoDays: LengthOfTime = { minutes: 48 * 60, unit: 'h' };

/**
 * What holds in every journal. Common practice, no published source, except 48 h between strength sessions for
 * the same muscles: advice of the American College of Sports Medicine (read where it is quoted).
 * A peak skill once in seven days is no default: its need says `gap:7d`.
 */
export const defaultRules: readonly Rule[] = [
  { subject: 'flexibility', gap: twoDays },
  { subject: 'strength', gap: twoDays },
  { subject: 'recovery', min: { count: 1 } },
  { subject: 'rest-day', min: { count: 1 } },
];

/**
 * The defaults whose subject no `#rule` names, then the written rules in their order. A written rule replaces the
 * whole default of its subject; several written rules of one subject all hold.
 */
export function effectiveRules(plan: JournalPlan): readonly Rule[] {
  const named = new Set(plan.rules.map((rule) => rule.subject));
  return [
    ...defaultRules.filter((rule) => !named.has(rule.subject)),
    ...plan.rules.map((written) => ({
      subject: written.subject,
      ...(written.gap ? { gap: written.gap } : {}),
      ...(written.min ? { min: written.min } : {}),
      ...(written.max ? { max: written.max } : {}),
      ...(written.cap ? { cap: written.cap } : {}),
      written,
    })),
  ];
}
