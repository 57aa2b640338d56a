import type { Entry } from '../notation/entries';
import { type EntryName, namesInEntry } from '../notation/entry-names';
import { touches } from '../notation/source-range';
import type { Journal } from './journal';
import type { Note } from './note';

/** A goal, a routine or a goal's metric, by its name. */
export type NamedThing =
  | { readonly of: 'goal' | 'routine'; readonly id: string }
  | { readonly of: 'metric'; readonly id: string; readonly goal: string };

/** A place in a journal at which a goal, a routine or a metric is named. */
export interface NamedPlace {
  readonly note: Note;
  readonly entry: Entry;
  readonly name: EntryName;
}

/** What a name in an entry is the name of; `undefined` for the subject of a rule that is no goal. */
function thingOf(name: EntryName, journal: Journal): NamedThing | undefined {
  if (name.of === 'metric')
    return name.goal === undefined ? undefined : { of: 'metric', id: name.id, goal: name.goal };
  if (name.of !== 'subject') return { of: name.of, id: name.id };
  return journal.plan.goals.has(name.id) ? { of: 'goal', id: name.id } : undefined;
}

function isSameThing(one: NamedThing, other: NamedThing): boolean {
  if (one.of !== other.of || one.id !== other.id) return false;
  return one.of !== 'metric' || (other.of === 'metric' && one.goal === other.goal);
}

/** The goal, routine or metric that is named at `offset` of a note. */
export function nameAt(
  journal: Journal,
  note: Note,
  offset: number,
): (NamedPlace & { readonly thing: NamedThing }) | undefined {
  for (const entry of note.reading.entries) {
    if (!touches(entry.range, offset)) continue;
    for (const name of namesInEntry(entry)) {
      const thing = thingOf(name, journal);
      if (thing && touches(name.range, offset)) return { note, entry, name, thing };
    }
  }
  return undefined;
}

/** Every place of a journal at which a goal, a routine or a metric is named, in order of path and place. */
export function namedPlaces(journal: Journal, thing: NamedThing): readonly NamedPlace[] {
  const places: NamedPlace[] = [];
  for (const note of journal.notes()) {
    for (const entry of note.reading.entries) {
      for (const name of namesInEntry(entry)) {
        const found = name.id === thing.id ? thingOf(name, journal) : undefined;
        if (found && isSameThing(found, thing)) places.push({ note, entry, name });
      }
    }
  }
  return places;
}
