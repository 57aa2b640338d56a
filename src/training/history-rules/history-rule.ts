import type { Finding, FindingCode } from '../finding';
import type { CheckContext } from '../week-under-check';

/** A check of what the whole of a journal shows. It is dear enough to be worth keeping. */
export interface HistoryRule {
  readonly code: FindingCode;
  /** All that the answer depends on: while each of these is the same value or object, the answer stands. */
  readonly inputs: (context: CheckContext) => readonly unknown[];
  /** Whether an input that is another object than before says the same to this check; never when left out. */
  readonly isSame?: (one: unknown, other: unknown) => boolean;
  readonly check: (context: CheckContext) => readonly Finding[];
}

/** Whether no input of the rule has changed. */
export function sameInputs(
  { isSame }: Pick<HistoryRule, 'isSame'>,
  one: readonly unknown[],
  other: readonly unknown[],
): boolean {
  return (
    one.length === other.length &&
    one.every((value, index) => Object.is(value, other[index]) || isSame?.(value, other[index]) === true)
  );
}
