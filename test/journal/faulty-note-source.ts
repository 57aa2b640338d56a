import type { NotePath } from '../../src/journal/note';
import type { NoteFile, NoteSource, SourceChange, Stop } from '../../src/journal/note-source';
import { MemoryNoteSource } from '../../src/journal/sources/memory-note-source';

/** What goes wrong with one answer of a source. */
export interface Fault {
  /**
   * `error`: it fails. `nothing`: it says that there is nothing. `part`: it ends in the middle, because the file is
   * still being written. `none`: it is right.
   */
  readonly kind: 'none' | 'error' | 'nothing' | 'part';
  /** How many turns the answer takes on its way, so that later ones overtake it. */
  readonly turns: number;
}

/** A source of notes in memory that answers late, wrongly, or not at all, as long as it has faults left. */
export class FaultyNoteSource implements NoteSource {
  readonly #notes = new MemoryNoteSource();
  readonly #listeners = new Set<(change: SourceChange) => void>();
  #faults: Fault[] = [];
  #isTelling = true;

  constructor() {
    this.#notes.onChange((change) => {
      if (this.#isTelling) for (const listener of [...this.#listeners]) listener(change);
    });
  }

  /** The next answers go wrong in these ways; those after them are right. */
  break(faults: readonly Fault[]): void {
    this.#faults = [...faults];
  }

  write(path: NotePath, text: string): void {
    this.#notes.write(path, text);
  }

  remove(path: NotePath): void {
    this.#notes.remove(path);
  }

  /** Makes changes of which the source tells nobody, as when a watcher misses them. */
  quietly(change: () => void): void {
    this.#isTelling = false;
    change();
    this.#isTelling = true;
  }

  async list(): Promise<readonly NoteFile[]> {
    const files = await this.#notes.list();
    const { kind, turns } = this.#faults.shift() ?? { kind: 'none', turns: 0 };
    await passing(turns);
    if (kind === 'error') throw new Error('The folder cannot be listed.');
    if (kind === 'nothing') return [];
    return kind === 'part' ? files.slice(0, files.length / 2) : files;
  }

  async read(path: NotePath): Promise<string | undefined> {
    const text = await this.#notes.read(path);
    const { kind, turns } = this.#faults.shift() ?? { kind: 'none', turns: 0 };
    await passing(turns);
    if (kind === 'error') throw new Error(`${path} cannot be read.`);
    if (kind === 'nothing') return undefined;
    if (kind !== 'part' || text === undefined) return text;
    // Whoever reads in the middle of a write is told of its end, unless the file was changed or removed meanwhile.
    if ((await this.#notes.read(path)) === text) this.#notes.write(path, text);
    return text.slice(0, text.length / 2);
  }

  onChange(listener: (change: SourceChange) => void): Stop {
    this.#listeners.add(listener);
    return { dispose: () => this.#listeners.delete(listener) };
  }
}

async function passing(turns: number): Promise<void> {
  for (let turn = 0; turn < turns; turn += 1) await undefined;
}
