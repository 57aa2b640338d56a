import type { Entry } from '../notation/entries';
import type { Located } from '../notation/source-range';
import type { Note } from './note';

/** What a name in a note is the name of. */
export type NamedThing = 'with' | 'where' | 'region' | 'kind';

function namesIn(entry: Entry): readonly (readonly [NamedThing, Located<string> | undefined])[] {
  switch (entry.tag) {
    case 'session':
    case 'need':
      return [
        ['kind', entry.kind],
        ['where', entry.where],
        ...entry.with.map((partner) => ['with', partner] as const),
      ];
    case 'free':
      return [['where', entry.where], ...entry.with.map((partner) => ['with', partner] as const)];
    case 'routine':
      return [['kind', entry.kind], ...entry.regions.map((region) => ['region', region] as const)];
    case 'kind':
      return [
        ['kind', entry.name],
        ['kind', entry.like],
      ];
    case 'sore':
    case 'pain':
      return [['region', entry.region]];
    default:
      return [];
  }
}

/** How often each name is written in a journal, kept note by note. */
export class NameCounts {
  readonly #counts: Readonly<Record<NamedThing, Map<string, number>>> = {
    with: new Map(),
    where: new Map(),
    region: new Map(),
    kind: new Map(),
  };
  readonly #sorted = new Map<NamedThing, readonly string[]>();

  add(note: Note): void {
    this.#count(note, 1);
  }

  remove(note: Note): void {
    this.#count(note, -1);
  }

  /** Most used first, then in order of the alphabet's code units. */
  names(of: NamedThing): readonly string[] {
    let names = this.#sorted.get(of);
    if (names === undefined) {
      names = [...this.#counts[of]]
        .sort(([aName, a], [bName, b]) => b - a || (aName < bName ? -1 : 1))
        .map(([name]) => name);
      this.#sorted.set(of, names);
    }
    return names;
  }

  #count(note: Note, by: 1 | -1): void {
    for (const entry of note.reading.entries) {
      for (const [of, name] of namesIn(entry)) {
        if (name === undefined) continue;
        const counts = this.#counts[of];
        const count = (counts.get(name.value) ?? 0) + by;
        if (count === 0) counts.delete(name.value);
        else counts.set(name.value, count);
        this.#sorted.delete(of);
      }
    }
  }
}
