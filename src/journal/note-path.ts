import type { NotePath } from './note';

/** The last part of a path. */
export function baseName(path: NotePath): string {
  return path.slice(path.lastIndexOf('/') + 1);
}

/** The folder that holds `path`; empty for the source's own folder. */
export function folderOf(path: NotePath): NotePath {
  return path.slice(0, Math.max(0, path.lastIndexOf('/')));
}

/** `name` in `folder`, whose path may be empty. */
export function joinPath(folder: NotePath, name: string): NotePath {
  return folder === '' ? name : `${folder}/${name}`;
}

/** Whether `path` lies below `folder`, at any depth. Everything lies below the empty path. */
export function isBelow(path: NotePath, folder: NotePath): boolean {
  return folder === '' || path.startsWith(`${folder}/`);
}

function withoutEnding(path: NotePath): string {
  return path.endsWith('.md') ? path.slice(0, -3) : path.replace(/\.md$/i, '');
}

/**
 * Order of paths, the same on every machine and in every language. File endings do not count, so that a note comes
 * before the copies that a sync program makes of it: `goals.md`, then `goals (conflicted copy).md`.
 */
export function comparePaths(a: NotePath, b: NotePath): number {
  const aStem = withoutEnding(a);
  const bStem = withoutEnding(b);
  if (aStem !== bStem) return aStem < bStem ? -1 : 1;
  return a < b ? -1 : a > b ? 1 : 0;
}

/** Whether the name of a folder keeps it out of every journal: hidden folders and installed packages. */
export function isIgnoredFolder(name: string): boolean {
  return name.startsWith('.') || name === 'node_modules';
}

/** Whether a file with this name can be a note. Hidden files are not: file systems leave copies in them. */
export function isNoteFileName(name: string): boolean {
  return /\.md$/i.test(name) && !name.startsWith('.');
}

/** Whether `path` can be a note: a Markdown file, not hidden, and in no ignored folder. */
export function isNotePath(path: NotePath): boolean {
  return isNoteFileName(baseName(path)) && isJournalFilePath(path);
}

/** Whether a file with this name can be a calendar of busy times. */
export function isCalendarFileName(name: string): boolean {
  return /\.ics$/i.test(name) && !name.startsWith('.');
}

/** Whether a file with this name can belong to a journal: a note, or a calendar. */
export function isJournalFileName(name: string): boolean {
  return isNoteFileName(name) || isCalendarFileName(name);
}

/** Whether `path` can be a file of a journal: a note or a calendar, not hidden, and in no ignored folder. */
export function isJournalFilePath(path: NotePath): boolean {
  const folders = path.split('/');
  const name = folders.pop() ?? '';
  return isJournalFileName(name) && !folders.some(isIgnoredFolder);
}

/** Whether the file at `path` can be a calendar of busy times. */
export function isCalendarPath(path: NotePath): boolean {
  return isCalendarFileName(baseName(path)) && isJournalFilePath(path);
}

/** Whether `path` is the note that makes its folder a journal. */
export function isJournalNote(path: NotePath): boolean {
  return baseName(path).toLowerCase() === 'journal.md';
}
