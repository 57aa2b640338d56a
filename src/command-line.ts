import { readdirSync, readFileSync } from 'node:fs';
import { basename, resolve } from 'node:path';
import { version } from '../package.json';
import { writeNotesToDisk } from './command-line/disk-note-writer';
import { runCommandLine } from './command-line/run-command-line';
import { DiskNoteSource } from './journal/sources/disk-note-source';

function openFolder(folder: string): DiskNoteSource | undefined {
  try {
    readdirSync(folder);
    return new DiskNoteSource(folder);
  } catch {
    return undefined;
  }
}

function readFile(path: string): string | undefined {
  try {
    return readFileSync(path, 'utf8');
  } catch {
    return undefined;
  }
}

// A reader such as `head` that has seen enough closes the pipe; that is no failure of the check.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code !== 'EPIPE') throw error;
});

void runCommandLine(process.argv.slice(2), {
  now: Date.now() / 60_000,
  zone: Intl.DateTimeFormat().resolvedOptions().timeZone,
  version,
  openFolder,
  folderName: (folder) => basename(resolve(folder)),
  readFile,
  writeNotes: writeNotesToDisk,
  write: (text) => process.stdout.write(text),
  writeError: (text) => process.stderr.write(text),
}).then((code) => {
  process.exitCode = code;
});
