import { runCommandLine } from '../../src/command-line/run-command-line';
import { MemoryNoteSource } from '../../src/journal/sources/memory-note-source';

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
    write: (text) => {
      out += text;
    },
    writeError: (text) => {
      error += text;
    },
  });
  return { code, out, error };
}
