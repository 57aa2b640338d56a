import type { NamedThing, Note } from './note';

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

  #count({ outline }: Note, by: 1 | -1): void {
    for (const [of, name] of outline.names) {
      const counts = this.#counts[of];
      const count = (counts.get(name) ?? 0) + by;
      if (count === 0) counts.delete(name);
      else counts.set(name, count);
      this.#sorted.delete(of);
    }
  }
}
