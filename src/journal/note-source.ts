import type { NotePath } from './note';

/** A note or a calendar as its folder lists it. */
export interface NoteFile {
  readonly path: NotePath;
  /** Bytes. */
  readonly size: number;
  /** Time of the last change, milliseconds since 1970; compared, never shown. */
  readonly modified: number;
}

/** What a source tells of. A folder stands for all that lies below it. */
export type SourceChange =
  | { readonly kind: 'changed'; readonly path: NotePath }
  | { readonly kind: 'removed'; readonly path: NotePath };

/** Stops what it was given for. */
export interface Stop {
  dispose(): void;
}

/**
 * Where notes come from: a disk, an editor's workspace, or memory. Only `.md` files are notes; `.ics` files beside them
 * are calendars of busy times.
 */
export interface NoteSource {
  /** Every Markdown and calendar file below the source's folder. Unreadable folders and symlink loops are passed over. */
  list(shouldStop?: () => boolean): Promise<readonly NoteFile[]>;
  /**
   * Text of a file without its byte order mark, or `undefined` when it is gone, unreadable, not a file, or,
   * for a note, not text.
   */
  read(path: NotePath): Promise<string | undefined>;
  /** Tells of notes that changed, appeared or went; the text is asked for with `read`. */
  onChange(listener: (change: SourceChange) => void): Stop;
}
