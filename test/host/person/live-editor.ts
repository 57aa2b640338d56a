// What the tests of a person's path start from: a journal on disk, and a live editor that has it open.
import { cpSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join, relative } from 'node:path';

export { type LiveEditor, openLiveEditor, themes } from '../../../scripts/live-editor.mjs';

/** A journal folder of its own for one test. */
export interface JournalFolder {
  /** The absolute path. */
  readonly path: string;
  /** The text of a note, as it is on disk now. */
  read(note: string): string;
  /** The paths of all files, relative to the folder, with slashes, sorted. */
  files(): readonly string[];
  /** Removes the folder. */
  remove(): void;
}

function journalFolder(path: string): JournalFolder {
  return {
    path,
    read: (note) => readFileSync(join(path, note), 'utf8'),
    files: () =>
      readdirSync(path, { recursive: true, withFileTypes: true })
        .filter((entry) => entry.isFile())
        .map((entry) => relative(path, join(entry.parentPath, entry.name)).replaceAll('\\', '/'))
        .sort(),
    remove: () => rmSync(dirname(path), { recursive: true, force: true }),
  };
}

function emptyFolder(): string {
  const path = join(mkdtempSync(join(tmpdir(), 'mtj-')), 'journal');
  mkdirSync(path);
  return path;
}

/**
 * Writes a journal into a new folder.
 * @param notes the text of each note by its path, with slashes
 */
export function writeJournal(notes: Readonly<Record<string, string>>): JournalFolder {
  const path = emptyFolder();
  for (const [note, text] of Object.entries(notes)) {
    mkdirSync(dirname(join(path, note)), { recursive: true });
    writeFileSync(join(path, note), text);
  }
  return journalFolder(path);
}

/** Copies a journal into a new folder, its dates as they are. */
export function copyJournal(source: string): JournalFolder {
  const path = emptyFolder();
  cpSync(source, path, { recursive: true });
  return journalFolder(path);
}
