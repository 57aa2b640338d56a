import { runCommandLine } from '../../src/command-line/run-command-line';
import { MemoryNoteSource } from '../../src/journal/sources/memory-note-source';
import type { NoteChange } from '../../src/planning/note-change';

/** What a run printed, and its exit code. */
export interface Run {
  readonly code: number;
  readonly out: string;
  readonly error: string;
}

/** The clock and the place of the machine in these tests: 25 February 2026, 12:00 in Greenwich. */
export const noon = Date.UTC(2026, 1, 25, 12) / 60_000;

/** Runs the command line in this process, on `notes` as the only folder there is, called `notes`. */
export async function run(
  words: readonly string[],
  notes: Readonly<Record<string, string>> = {},
  machine: {
    readonly now?: number;
    readonly zone?: string;
    /** Files of the machine outside of the notes. */
    readonly files?: Readonly<Record<string, string>>;
    /** Takes the changes that are to be written, and says why not. */
    readonly writeNotes?: (changes: readonly NoteChange[]) => string | undefined;
  } = {},
): Promise<Run> {
  let out = '';
  let error = '';
  const code = await runCommandLine(words, {
    now: machine.now ?? noon,
    zone: machine.zone ?? 'UTC',
    version: '1.2.3',
    openFolder: (folder) => (folder === 'notes' ? new MemoryNoteSource(notes) : undefined),
    folderName: (folder) => folder,
    readFile: (path) => machine.files?.[path],
    writeNotes: (_folder, changes) => machine.writeNotes?.(changes),
    write: (text) => {
      out += text;
    },
    writeError: (text) => {
      error += text;
    },
  });
  return { code, out, error };
}
