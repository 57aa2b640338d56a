import type { Entry, TagName } from '../notation/entries';
import type { Note } from './note';

const planningTags: ReadonlySet<TagName> = new Set<TagName>([
  'goal',
  'why',
  'metric',
  'step',
  'need',
  'routine',
  'rule',
  'kind',
  'free',
  'busy',
  'event',
  'block',
  'athlete',
  'zone',
]);

/** The entries of a note that say something about the plan. */
export function planningEntries(note: Pick<Note, 'reading'>): readonly Entry[] {
  return note.reading.entries.filter((entry) => planningTags.has(entry.tag));
}
