import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import type { NotePath } from '../../src/journal/note';

/** A new folder with these notes, and no longer than this process. */
export function journalOnDisk(notes: Iterable<readonly [NotePath, string]>): string {
  const folder = mkdtempSync(join(tmpdir(), 'bench-journal-'));
  process.on('exit', () => rmSync(folder, { recursive: true, force: true }));
  const made = new Set<string>();
  for (const [path, text] of notes) {
    const below = join(folder, dirname(path));
    if (!made.has(below)) mkdirSync(below, { recursive: true });
    made.add(below);
    writeFileSync(join(folder, path), text);
  }
  return folder;
}

/** This month's notes and those that plan: what an editor asks to be read first, on the first of March 2026. */
export function isFirst(path: NotePath): boolean {
  const name = path.slice(path.lastIndexOf('/') + 1);
  return !/^\d{4}-/.test(name) || ['2026-02', '2026-03'].includes(name.slice(0, 7));
}
