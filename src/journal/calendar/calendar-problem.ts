import type { SourceRange } from '../../notation/source-range';

/** Why something in a calendar file cannot be used. */
export type CalendarProblemReason =
  /** Nothing in the file is a calendar. */
  | 'not-a-calendar'
  | 'unreadable-line'
  | 'not-ended'
  | 'not-begun'
  | 'outside'
  | 'missing-start'
  | 'unreadable-time'
  | 'unreadable-length'
  | 'unreadable-rule'
  | 'ends-before-start'
  | 'unreadable-zone'
  | 'unknown-zone';

/** Something in a calendar file that cannot be used; the rest of the file is. */
export interface CalendarProblem {
  readonly reason: CalendarProblemReason;
  /** The line in question. */
  readonly range: SourceRange;
  /** The word, value or name in question. */
  readonly text: string;
}
