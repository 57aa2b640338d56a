import type { NotePath } from './note';
import { isCalendarPath } from './note-path';

/** Larger files are passed over: no one writes 20 MB by hand, and reading one would stop everything else. */
export const largestNote = 20 * 1024 * 1024;

/**
 * The text in the bytes of a file, its byte order mark left out; `undefined` when it is not text: invalid UTF-8,
 * or NUL characters in it, as in a picture or a note in UTF-16.
 */
export function decodeNote(bytes: Uint8Array): string | undefined {
  try {
    const text = new TextDecoder('utf-8', { fatal: true }).decode(bytes);
    return text.includes('\0') ? undefined : text;
  } catch {
    return undefined;
  }
}

/**
 * The text in the bytes of the file at `path`. A calendar is always read: one in an old encoding loses some letters of
 * its words and none of its times, and one that is no text at all is told of as such.
 */
export function decodeFile(path: NotePath, bytes: Uint8Array): string | undefined {
  return isCalendarPath(path) ? new TextDecoder('utf-8').decode(bytes) : decodeNote(bytes);
}
