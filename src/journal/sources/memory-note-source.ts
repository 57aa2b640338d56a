import type { NotePath } from '../note';
import { isBelow, isJournalFilePath } from '../note-path';
import type { NoteFile, NoteSource, SourceChange, Stop } from '../note-source';

/** Notes in memory, for previews and tests. What is written is told of at once. */
export class MemoryNoteSource implements NoteSource {
  readonly #notes = new Map<NotePath, { readonly text: string; readonly modified: number }>();
  readonly #listeners = new Set<(change: SourceChange) => void>();
  #writes = 0;

  /** @param notes texts by path */
  constructor(notes: Readonly<Record<NotePath, string>> = {}) {
    for (const [path, text] of Object.entries(notes)) this.#set(path, text);
  }

  async list(): Promise<readonly NoteFile[]> {
    return [...this.#notes]
      .filter(([path]) => isJournalFilePath(path))
      .map(([path, { text, modified }]) => ({
        path,
        size: new TextEncoder().encode(text).length,
        modified,
      }));
  }

  async read(path: NotePath): Promise<string | undefined> {
    return this.#notes.get(path)?.text;
  }

  onChange(listener: (change: SourceChange) => void): Stop {
    this.#listeners.add(listener);
    return { dispose: () => this.#listeners.delete(listener) };
  }

  /** Writes a note, new or not. */
  write(path: NotePath, text: string): void {
    this.#set(path, text);
    this.#tell({ kind: 'changed', path });
  }

  /** Removes a note, or a folder with all below it. */
  remove(path: NotePath): void {
    for (const note of [...this.#notes.keys()]) {
      if (note === path || isBelow(note, path)) this.#notes.delete(note);
    }
    this.#tell({ kind: 'removed', path });
  }

  #set(path: NotePath, text: string): void {
    this.#writes += 1;
    this.#notes.set(path, { text, modified: this.#writes });
  }

  #tell(change: SourceChange): void {
    for (const listener of [...this.#listeners]) listener(change);
  }
}
