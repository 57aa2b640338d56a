import type { NotePath } from './note';
import { readNoteName } from './note-name';
import { comparePaths, folderOf, isJournalNote } from './note-path';

/**
 * Which folders are journals, as notes come and go: each that holds a note named `journal.md`. Without any such
 * note, day notes make the source's own folder (the empty path) one journal with the default rules.
 */
export class JournalFolders {
  /** How many notes make a folder a journal; more than one where letter case tells names apart. */
  readonly #marked = new Map<NotePath, number>();
  #dayNotes = 0;

  /** @returns whether other folders are journals now */
  add(path: NotePath): boolean {
    return this.#count(path, 1);
  }

  /** @returns whether other folders are journals now */
  remove(path: NotePath): boolean {
    return this.#count(path, -1);
  }

  /** The folders that are journals, in order. */
  all(): readonly NotePath[] {
    if (this.#marked.size === 0) return this.#dayNotes > 0 ? [''] : [];
    return [...this.#marked.keys()].sort(comparePaths);
  }

  /** The journal to which the note at `path` belongs: of the journals around it, the deepest. */
  around(path: NotePath): NotePath | undefined {
    if (this.#marked.size === 0) return this.#dayNotes > 0 ? '' : undefined;
    for (let folder = folderOf(path); ; folder = folderOf(folder)) {
      if (this.#marked.has(folder)) return folder;
      if (folder === '') return undefined;
    }
  }

  #count(path: NotePath, by: 1 | -1): boolean {
    if (isJournalNote(path)) {
      const folder = folderOf(path);
      const count = (this.#marked.get(folder) ?? 0) + by;
      if (count > 0) this.#marked.set(folder, count);
      else this.#marked.delete(folder);
      return count === 0 || (count === 1 && by === 1);
    }
    if (readNoteName(path).kind !== 'day') return false;
    this.#dayNotes += by;
    return this.#marked.size === 0 && (this.#dayNotes === 0 || (this.#dayNotes === 1 && by === 1));
  }
}

/** The folders that are journals among the notes at `paths`, in order. */
export function journalFolders(paths: Iterable<NotePath>): readonly NotePath[] {
  const folders = new JournalFolders();
  for (const path of paths) folders.add(path);
  return folders.all();
}
