import {
  closeSync,
  existsSync,
  fsyncSync,
  mkdirSync,
  openSync,
  readFileSync,
  realpathSync,
  renameSync,
  rmSync,
  statSync,
  writeSync,
} from 'node:fs';
import { dirname, join } from 'node:path';
import { decodeNote } from '../journal/decode-note';
import { applyTextEdits } from '../notation/text-edit';
import type { NoteChange } from '../planning/note-change';

const byteOrderMark = Uint8Array.of(0xef, 0xbb, 0xbf);

interface PlannedFile {
  readonly note: string;
  readonly path: string;
  readonly bytes: Uint8Array;
  readonly isNew: boolean;
  readonly mode?: number;
}

function hasMark(bytes: Uint8Array): boolean {
  return byteOrderMark.every((byte, index) => bytes[index] === byte);
}

/** What would be written for a change, or why it may not be. */
function planned(folder: string, change: NoteChange): PlannedFile | string {
  const { note } = change;
  const path = join(folder, note);
  if (note.split('/').includes('..')) return `"${note}" lies outside of the folder.`;
  if (change.kind === 'create') {
    if (existsSync(path)) return `"${note}" is there already. Nothing was written.`;
    return { note, path, bytes: new TextEncoder().encode(change.text), isNew: true };
  }
  const stale = `"${note}" has changed since it was read. Nothing was written.`;
  try {
    // A link stays a link: what it leads to is changed.
    const real = realpathSync(path);
    const bytes = readFileSync(real);
    if (decodeNote(bytes) !== change.before) return stale;
    const text = new TextEncoder().encode(applyTextEdits(change.before, change.edits));
    const marked = hasMark(bytes) ? Buffer.concat([byteOrderMark, text]) : text;
    return { note, path: real, bytes: marked, isNew: false, mode: statSync(real).mode };
  } catch {
    return stale;
  }
}

function writeAll(path: string, flags: string, bytes: Uint8Array, mode: number | undefined): void {
  const file = openSync(path, flags, mode);
  try {
    let written = 0;
    while (written < bytes.length) written += writeSync(file, bytes, written);
    fsyncSync(file);
  } finally {
    closeSync(file);
  }
}

/** A note is never seen half written: its new text is complete under another name before it takes its place. */
function replace({ path, bytes, mode }: PlannedFile): void {
  const beside = `${path}.${process.pid}.new`;
  try {
    writeAll(beside, 'wx', bytes, mode);
    renameSync(beside, path);
  } catch (error) {
    rmSync(beside, { force: true });
    throw error;
  }
}

/**
 * Makes planned changes of notes below a folder of this machine. All of them are looked at before the first is made:
 * when a note reads otherwise than the change says, or a new one is there already, nothing is written.
 * @returns why not, in one line; `undefined` when all is written.
 */
export function writeNotesToDisk(folder: string, changes: readonly NoteChange[]): string | undefined {
  const files: PlannedFile[] = [];
  for (const change of changes) {
    const file = planned(folder, change);
    if (typeof file === 'string') return file;
    files.push(file);
  }
  const done: string[] = [];
  for (const file of files) {
    try {
      if (file.isNew) {
        mkdirSync(dirname(file.path), { recursive: true });
        writeAll(file.path, 'wx', file.bytes, undefined);
      } else replace(file);
    } catch (error) {
      const reason = error instanceof Error ? error.message : String(error);
      const before = done.length === 0 ? 'Nothing was written.' : `Written before it: ${done.join(', ')}.`;
      return `"${file.note}" could not be written (${reason}). ${before}`;
    }
    done.push(file.note);
  }
  return undefined;
}
