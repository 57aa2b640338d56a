import type { SourceRange } from './source-range';

/** Why some characters of a tag could not be read. */
export type UnreadableReason =
  | 'unknown-field'
  | 'unexpected-word'
  | 'repeated-field'
  | 'unknown-unit'
  | 'missing-unit'
  | 'space-before-unit'
  | 'not-a-date'
  | 'not-a-time'
  | 'not-a-length'
  | 'not-a-quantity'
  | 'not-a-rating'
  | 'not-per-week'
  | 'not-a-weekday'
  | 'not-a-zone'
  | 'not-a-side'
  | 'not-a-word'
  | 'empty-value'
  | 'missing-field'
  | 'unclosed-quote'
  | 'no-table'
  | 'not-a-week'
  | 'repeated-week'
  | 'not-a-volume'
  | 'unknown-kind'
  | 'front-matter';

/** Something in a note that the notation does not allow; the rest of the note still counts. */
export type NotationProblem =
  | {
      readonly code: 'unreadable-field';
      readonly reason: UnreadableReason;
      readonly range: SourceRange;
      /** The characters in question. */
      readonly text: string;
      /** What the tag accepts there, for the message: field names, units or an example. */
      readonly expected?: readonly string[];
      /** What to put in place of `range`, when there is one likely reading. */
      readonly suggestion?: string;
    }
  | {
      readonly code: 'unknown-tag';
      readonly range: SourceRange;
      readonly text: string;
      /** The tag it is probably meant to be, with its `#`. */
      readonly suggestion: string;
    }
  | {
      readonly code: 'bad-date';
      readonly range: SourceRange;
      /** The date that does not exist. */
      readonly text: string;
    };
