import type { NoteReading } from '../notation/note-reading';
import type { SourceRange } from '../notation/source-range';
import type { IsoDate } from '../notation/time/iso-date';
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

/** A note that has been read. */
export interface Note extends JournalFile {
  readonly name: NoteName;
  readonly reading: NoteReading;
}

/** A place in a note, or in another file of a journal. */
export interface NotePlace {
  readonly note: NotePath;
  readonly range: SourceRange;
}
