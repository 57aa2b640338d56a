import type { CalendarFile } from './calendar-file';
import type { JournalIndex } from './journal-index';
import type { Note, NotePath } from './note';
import type { NoteFile } from './note-source';

/** A text at a path, which is read as soon as a journal needs it. */
export interface NoteVersion {
  readonly text: string;
  file?: Note | CalendarFile;
}

/** The text of a note that is there already, fetched only when it is asked for. */
export function versionOf(note: Note): NoteVersion {
  return {
    get text() {
      return note.text;
    },
    file: note,
  };
}

/** What a collection knows of one path. */
export interface KnownNote {
  readonly path: NotePath;
  /** As the source listed it when its text was asked for; `undefined` when a change was told since. */
  file?: NoteFile | undefined;
  /** Whether the source holds it, readable or not. */
  stored: boolean;
  /** The note that an earlier session read from just this file, to be taken in its turn in place of reading it. */
  kept?: Note | undefined;
  /** Its text on the disk, once read. */
  disk?: NoteVersion | undefined;
  /** The text of an open document, which wins over the disk. */
  open?: NoteVersion | undefined;
  /** Number of what was last heard of its text on the disk, so that a slow answer does not undo a later one. */
  heard: number;
  /** The index in which it stands. */
  journal?: JournalIndex | undefined;
}

/** Whether a document is open on the note whose text the disk does not hold. */
export function isUnsaved(known: KnownNote): boolean {
  return known.open !== undefined && known.open.text !== known.disk?.text;
}
