import type { Finding, FindingCode } from './finding';
import { historyRules } from './history-rules';
import { sameInputs } from './history-rules/history-rule';
import type { CheckContext } from './week-under-check';

/** What the whole of a journal shows: paces, hours, a slide, gaps. In no order. */
export function checkHistory(context: CheckContext): readonly Finding[] {
  return historyRules.flatMap((rule) => rule.check(context));
}

interface Kept {
  readonly inputs: readonly unknown[];
  readonly findings: readonly Finding[];
}

/** As {@link checkHistory}, for a journal that is checked again and again: a check is made only when its notes changed. */
export class KeptHistory {
  readonly #kept = new Map<FindingCode, Kept>();

  /** What the journal of `context` shows now. */
  check(context: CheckContext): readonly Finding[] {
    return historyRules.flatMap((rule) => {
      const inputs = rule.inputs(context);
      const before = this.#kept.get(rule.code);
      if (before && sameInputs(rule, before.inputs, inputs)) return before.findings;
      const findings = rule.check(context);
      this.#kept.set(rule.code, { inputs, findings });
      return findings;
    });
  }
}
