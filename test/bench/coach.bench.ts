// The workspace of a coach: thirty athletes with ten years of day notes each, opened for the first time and again.
import assert from 'node:assert/strict';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { JournalCollection } from '../../src/journal/journal-collection';
import { decodeKeptNotes, encodeKeptNotes } from '../../src/journal/kept/kept-notes';
import type { NotePath } from '../../src/journal/note';
import { DiskNoteSource } from '../../src/journal/sources/disk-note-source';
import type { IsoDate } from '../../src/notation/time/iso-date';
import { generateJournal } from './generate-journal';
import { isFirst, journalOnDisk } from './journal-on-disk';
import { compare, printComparison } from './measure';
import { printRow, withSpread } from './table';

function* roster(): Iterable<readonly [NotePath, string]> {
  for (let athlete = 1; athlete <= 30; athlete += 1)
    for (const [path, text] of generateJournal({
      dayNotes: 3650,
      last: '2026-03-01' as IsoDate,
      seed: athlete,
    }))
      yield [`athlete-${athlete}/${path}`, text];
}

const folder = journalOnDisk(roster());
const from = { reader: 'bench', folder: 'bench' };
const source = new DiskNoteSource(folder);
const cold = async () => {
  const collection = new JournalCollection(source);
  await collection.load({ first: isFirst });
  assert.equal(collection.journals().length, 30);
  return collection;
};
const keptFile = join(folder, '.kept');
writeFileSync(keptFile, await encodeKeptNotes((await cold()).readFiles(), from, Date.now() + 60_000));
const warm = async () => {
  const collection = new JournalCollection(source);
  await collection.load({ first: isFirst, kept: decodeKeptNotes(readFileSync(keptFile), from) });
  assert.equal(collection.counts.read, 0);
};
const list = () => source.list();
const coldComparison = await compare(list, cold, { warmUp: 0, runs: 3 });
printComparison(['list the folders of 30 athletes', 'read all of it'], coldComparison);
const warmComparison = await compare(list, warm, { warmUp: 1, runs: 3 });
printComparison(['list the folders of 30 athletes', 'index out of the kept notes'], warmComparison);
printRow(
  'A coach’s 30 athletes with 3,650 notes each: cold start and warm start, against listing the folder',
  '',
  `${withSpread(coldComparison.ratio, ' times')}; ${withSpread(warmComparison.ratio, ' times')}`,
);
