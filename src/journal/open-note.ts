import { readNote } from '../notation/read-note';
import { lineStarts } from '../notation/source-range';
import type { Note, NotePath } from './note';
import { readNoteName } from './note-name';

/** Reads `text`, from which the byte order mark has been taken, as the note at `path`. Any text is a note. */
export function openNote(path: NotePath, text: string): Note {
  return { path, name: readNoteName(path), text, lineStarts: lineStarts(text), reading: readNote(text) };
}
