import type { Journal } from '../../journal/journal';
import type { Note } from '../../journal/note';
import type { Finding, FindingCode } from '../finding';

/** A check of what one note writes, against the journal it belongs to. */
export interface NoteRule {
  readonly code: FindingCode;
  readonly check: (note: Note, journal: Journal) => readonly Finding[];
}
