import type { Journal } from '../journal/journal';
import type { Note } from '../journal/note';
import type { Finding } from './finding';
import { inOrder } from './finding-order';
import { noteRules } from './notation-rules';

/** What cannot be read in `note`, or does not go with the rest of its journal. */
export function checkNote(note: Note, journal: Journal): readonly Finding[] {
  return inOrder(noteRules.flatMap((rule) => rule.check(note, journal)));
}
