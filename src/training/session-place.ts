import type { Session } from '../journal/journal';
import type { NotePlace } from '../journal/note';
import type { EntryBase } from '../notation/entries';
import type { SourceRange } from '../notation/source-range';
import type { Message, RelatedPlace } from './finding';

/** The characters of a tag from `#` to its last field, a remark left out. */
export function tagRange(entry: EntryBase): SourceRange {
  return { start: entry.range.start, end: entry.fieldsEnd };
}

/** Where a session is written: its tag, or the date it was moved to when it is not written there yet. */
export function sessionPlace(session: Session): NotePlace {
  const { note, entry } = session;
  if (session.movedFrom !== undefined && entry.moved) return { note, range: entry.moved.range };
  return { note, range: tagRange(entry) };
}

/** Another place for a finding to speak of. */
export function related(place: NotePlace, message: Message): RelatedPlace {
  return { note: place.note, range: place.range, message };
}

/** Where an entry's tag stands. */
export function entryPlace(written: { readonly note: string; readonly entry: EntryBase }): NotePlace {
  return { note: written.note, range: tagRange(written.entry) };
}
