import type { Finding, FindingCode } from '../finding';
import type { CheckContext } from '../week-under-check';

/** A check of what the whole of a journal shows. It is dear enough to be worth keeping. */
export interface HistoryRule {
  readonly code: FindingCode;
  /** All that the answer depends on: while each of these is the same value or object, the answer stands. */
  readonly inputs: (context: CheckContext) => readonly unknown[];
  readonly check: (context: CheckContext) => readonly Finding[];
}

/** Whether no input has changed. */
export function sameInputs(one: readonly unknown[], other: readonly unknown[]): boolean {
  return one.length === other.length && one.every((value, index) => Object.is(value, other[index]));
}
