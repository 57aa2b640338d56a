import type { MarkdownReader } from './markdown/markdown-reader';
import type { NoteReading } from './note-reading';

/** Reads one note. Placeholder signature, filled in next. */
export function readNote(_text: string, _markdown?: MarkdownReader): NoteReading {
  return { headings: [], entries: [], problems: [] };
}
