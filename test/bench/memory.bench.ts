/**
 * The memory that a journal of ten thousand notes takes, over an empty process that has loaded the same code: as an
 * editor reads it for the first time, as it comes out of the kept notes, and when every note has been asked for.
 */
import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { JournalCollection } from '../../src/journal/journal-collection';
import { decodeKeptNotes, encodeKeptNotes } from '../../src/journal/kept/kept-notes';
import { DiskNoteSource } from '../../src/journal/sources/disk-note-source';
import type { IsoDate } from '../../src/notation/time/iso-date';
import { generateJournal } from './generate-journal';
import { isFirst, journalOnDisk } from './journal-on-disk';
import { summarize } from './measure';
import { printRow, withSpread } from './table';

const from = { reader: 'bench', folder: 'bench' };
const kinds = ['cold', 'warm', 'everything'] as const;

/** Bytes that are reachable: on the heap and in buffers outside of it. */
function bytesInUse(): number {
  for (let round = 0; round < 3; round += 1) globalThis.gc?.();
  const { heapUsed, external } = process.memoryUsage();
  return heapUsed + external;
}

/** The bytes that a way of opening the folder adds, in a process of its own. */
async function added(folder: string, kind: string): Promise<number> {
  const source = new DiskNoteSource(folder);
  let bytes: Uint8Array | undefined;
  if (kind === 'warm') {
    const before = new JournalCollection(source);
    await before.load({ first: isFirst });
    bytes = await encodeKeptNotes(before.readFiles(), from, Date.now() + 60_000);
  }
  const empty = bytesInUse() - (bytes?.byteLength ?? 0);
  const collection = new JournalCollection(source);
  await collection.load({
    first: isFirst,
    ...(bytes ? { kept: decodeKeptNotes(bytes, from) } : {}),
  });
  if (kind === 'everything')
    for (const journal of collection.journals())
      for (const note of journal.notes()) if (note.reading.entries.length < 0) throw new Error('Never.');
  const full = bytesInUse();
  if (collection.journals().length !== 1) throw new Error('There is no journal.');
  return full - empty;
}

const [, , folder, kind] = process.argv;
if (folder !== undefined && kind !== undefined) {
  console.log(await added(folder, kind));
} else {
  const notes = generateJournal({ dayNotes: 10_000, last: '2026-03-01' as IsoDate, seed: 2026 });
  const journal = journalOnDisk(notes);
  for (const kind of kinds) {
    const runs = Array.from({ length: 3 }, () => {
      const child = ['--expose-gc', fileURLToPath(import.meta.url), journal, kind];
      const { stdout, stderr, status } = spawnSync(process.execPath, child, { encoding: 'utf8' });
      if (status !== 0) throw new Error(stderr);
      return Number(stdout);
    });
    const megabytes = summarize(runs.map((bytes) => bytes / 1e6));
    const aNote = summarize(runs.map((bytes) => bytes / notes.size));
    const names = {
      cold: 'Memory at 10,000 notes over an empty process, and a note',
      warm: 'The same out of the kept notes',
      everything: 'The same when every note has been asked for',
    };
    printRow(
      names[kind],
      kind === 'cold' ? 'at most 60 MB' : '',
      `${withSpread(megabytes, ' MB')}; ${aNote.median.toFixed(0)} bytes`,
    );
  }
}
