import type { NoteReading } from '../notation/note-reading';
import type { SourceRange } from '../notation/source-range';
import type { DayNumber, IsoDate } from '../notation/time/iso-date';
import type { IsoWeek } from '../notation/time/iso-week';

/** Path of a note, or of another file of a journal, from the folder that its source reads, parts joined by `/`. */
export type NotePath = string;

/** What a note's file name says of it. */
export type NoteName =
  | { readonly kind: 'day'; readonly date: IsoDate }
  | { readonly kind: 'week'; readonly week: IsoWeek }
  | {
      readonly kind: 'other';
      /** The date or week that the name begins with and that does not exist, such as `2026-02-30`. */
      readonly badDate?: string;
    };

/** The text of a file of a journal. */
export interface JournalFile {
  readonly path: NotePath;
  readonly text: string;
  /** Offsets at which the lines of `text` begin. */
  readonly lineStarts: readonly number[];
}

/** What a name in a note is the name of. */
export type NamedThing = 'with' | 'where' | 'region' | 'kind';

/** A name as it is written once, and what it names. */
export type WrittenName = readonly [NamedThing, string];

/**
 * What an index has to know of a note before anything is asked of it. It is all that is worked out of years of old
 * notes; their entries are read when a question leads to them.
 */
export interface NoteOutline {
  /** Days to which it moves sessions, in the order of the text. */
  readonly movedTo: readonly DayNumber[];
  /** Goals that it has readings of, known or not, each once. */
  readonly measured: readonly string[];
  readonly tellsOfPain: boolean;
  /** Whether something in it plans. */
  readonly plans: boolean;
  /** Whether a session in it is neither ticked nor skipped nor moved. */
  readonly hasOpenSession: boolean;
  /** Every name in it, as often as it is written. */
  readonly names: readonly WrittenName[];
}

/** A note. Its entries are read at the latest when they are asked for. */
export interface Note extends JournalFile {
  readonly name: NoteName;
  readonly outline: NoteOutline;
  readonly reading: NoteReading;
}

/** A place in a note, or in another file of a journal. */
export interface NotePlace {
  readonly note: NotePath;
  readonly range: SourceRange;
}
