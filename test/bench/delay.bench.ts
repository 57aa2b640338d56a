/**
 * How long other work waits at most, by the delay of the event loop: while a journal of ten thousand notes is read, is
 * taken out of the kept notes, and while weeks are planned. In Node; the editor's own work is not in it.
 */
import { monitorEventLoopDelay } from 'node:perf_hooks';
import { runInSlices } from '../../src/editor/run-in-slices';
import type { Journal } from '../../src/journal/journal';
import { JournalCollection } from '../../src/journal/journal-collection';
import { decodeKeptNotes, encodeKeptNotes } from '../../src/journal/kept/kept-notes';
import { DiskNoteSource } from '../../src/journal/sources/disk-note-source';
import type { IsoDate } from '../../src/notation/time/iso-date';
import { addWeeks, isoWeekOf } from '../../src/notation/time/iso-week';
import { planWeeksInSlices } from '../../src/planning/plan-weeks';
import { generateJournal } from './generate-journal';
import { isFirst, journalOnDisk } from './journal-on-disk';
import { summarize } from './measure';
import { digits, printRow, withSpread } from './table';

const today = '2026-03-01' as IsoDate;
const from = { reader: 'bench', folder: 'bench' };
const folder = journalOnDisk(generateJournal({ dayNotes: 10_000, last: today, seed: 2026 }));
const source = new DiskNoteSource(folder);

/** The longest wait of each of some runs, and the 99th percentile of all waits of the last, in milliseconds. */
async function waits(name: string, work: () => Promise<unknown>): Promise<void> {
  const longest: number[] = [];
  let p99 = 0;
  for (let run = -2; run < 7; run += 1) {
    const delay = monitorEventLoopDelay({ resolution: 1 });
    delay.enable();
    // The first sample is taken once the loop has gone round.
    await new Promise((resolve) => setTimeout(resolve, 5));
    delay.reset();
    await work();
    await new Promise((resolve) => setTimeout(resolve, 5));
    delay.disable();
    if (run >= 0) longest.push(delay.max / 1e6);
    p99 = delay.percentile(99) / 1e6;
  }
  printRow(
    `Longest wait of other work: ${name}; 99th percentile`,
    'at most 16 ms',
    `${withSpread(summarize(longest), ' ms')}; ${digits(p99)} ms`,
  );
}

async function opened(): Promise<JournalCollection> {
  const collection = new JournalCollection(source);
  await collection.load({ first: isFirst });
  return collection;
}

await waits('reading 10,000 notes', opened);
const collection = await opened();
const kept = await encodeKeptNotes(collection.readFiles(), from, Date.now() + 60_000);
await waits('taking 10,000 notes out of the kept ones', async () => {
  await new JournalCollection(source).load({ first: isFirst, kept: decodeKeptNotes(kept, from) });
});
await waits('keeping 10,000 notes', () => encodeKeptNotes(collection.readFiles(), from, Date.now() + 60_000));
const [journal] = collection.journals() as readonly [Journal];
for (const count of [1, 12]) {
  const weeks = Array.from({ length: count }, (_, index) => addWeeks(isoWeekOf(today), index + 1));
  const options = { today, zone: 'Europe/Lisbon', weeks, mode: 'new' as const, nodesPerSlice: 0 };
  const name = count === 1 ? 'planning a week' : `planning ${count} weeks`;
  await waits(name, () => runInSlices(planWeeksInSlices(journal, options)));
}
