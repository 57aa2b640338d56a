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
