/**
 * Opening a journal of ten thousand day notes: for the first time, against a search of its folder for the tags and
 * against a syntax tree of every note; and again, from what the last time kept, against listing the folder. And the
 * folder of a coach of thirty athletes.
 */
import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { JournalCollection, type LoadOptions } from '../../src/journal/journal-collection';
import { decodeKeptNotes, encodeKeptNotes } from '../../src/journal/kept/kept-notes';
import { DiskNoteSource } from '../../src/journal/sources/disk-note-source';
import { readMarkdownTree } from '../../src/notation/markdown/mdast-reader';
import { readNote } from '../../src/notation/read-note';
import type { IsoDate } from '../../src/notation/time/iso-date';
import { addWeeks, isoWeekOf } from '../../src/notation/time/iso-week';
import { PublishedFindings } from '../../src/training/published-findings';
import { generateJournal } from './generate-journal';
import { isFirst, journalOnDisk } from './journal-on-disk';
import { compare, measure, printComparison, printMeasurement } from './measure';
import { searchProgram } from './search-program';
import { printRow, withSpread } from './table';

const today = '2026-03-01' as IsoDate;
const openNotes = new Set([`log/2026/${today}.md`]);
const weeks = [-1, 0, 1, 2].map((offset) => addWeeks(isoWeekOf(today), offset));
const from = { reader: 'bench', folder: 'bench' };
const effort = { warmUp: 2, runs: 7 };

const notes = generateJournal({ dayNotes: 10_000, last: today, seed: 2026 });
const folder = journalOnDisk(notes);
const size = [...notes.values()].reduce((sum, text) => sum + text.length, 0);
console.log(`${notes.size} notes, ${(size / 1e6).toFixed(1)} MB`);

const source = new DiskNoteSource(folder);
const loaded = async (options: LoadOptions = {}) => {
  const collection = new JournalCollection(source);
  await collection.load({ first: isFirst, ...options });
  return collection;
};
const thisWeek = (collection: JournalCollection) => {
  const [journal] = collection.journals();
  assert.ok(journal);
  return new PublishedFindings(journal).refresh({ today, zone: 'Europe/Lisbon', weeks, openNotes });
};
const coldStart = async () => thisWeek(await loaded());
const keptFile = join(folder, '.kept');
const kept = async () => decodeKeptNotes(readFileSync(keptFile), from);
const warmIndex = () => loaded({ kept: kept() });

printMeasurement('first start in a new process', await measure(coldStart, { warmUp: 0, runs: 1 }));

const search = searchProgram();
if (search === undefined) {
  console.log('The search program is not there: npm start, or npm test, installs the editor that has it.');
} else {
  const tags = '#(goal|metric|step|need|routine|rule|free|busy|event|session|measure|sore|pain|win)\\b';
  const searched = () => {
    const { status, stdout } = spawnSync(search, ['--no-config', '-n', tags, folder], { maxBuffer: 1 << 28 });
    assert.equal(status, 0);
    return stdout.length;
  };
  const cold = await compare(searched, coldStart, effort);
  printComparison(['search the folder for the tags', 'read it, with this week’s findings'], cold);
  printRow(
    'Cold start, 10,000 notes: folder to index and this week’s findings, against ripgrep over the folder',
    'at most 5 times',
    withSpread(cold.ratio, ' times'),
  );
}

// A twentieth of the notes, which takes long enough.
const someNotes = [...notes.values()].filter((_, index) => index % 20 === 0);
const tree = await measure(() => someNotes.map((text) => readNote(text, readMarkdownTree)), {
  warmUp: 1,
  runs: 3,
});
const cold = await measure(coldStart, { warmUp: 0, runs: 5 });
const times = (value: number) => (value * 20) / cold.median;
printMeasurement('a syntax tree of every twentieth note', tree);
printRow(
  'Cold start against mdast over every note (a twentieth measured)',
  'at least 30 times faster',
  withSpread({ ...tree, median: times(tree.median), low: times(tree.low), high: times(tree.high) }, ' times'),
);

writeFileSync(keptFile, await encodeKeptNotes((await loaded()).readFiles(), from, Date.now() + 60_000));
const warm = await warmIndex();
assert.deepEqual([warm.counts.read, warm.takenFromKept], [0, notes.size]);
const warmComparison = await compare(() => source.list(), warmIndex, effort);
printComparison(['list the folder', 'index out of the kept notes'], warmComparison);
printRow(
  'Warm start, 10,000 notes: index out of the kept notes, against listing the folder',
  'at most 2 times',
  withSpread(warmComparison.ratio, ' times'),
);
const withFindings = await compare(
  () => source.list(),
  async () => thisWeek(await warmIndex()),
  effort,
);
printComparison(['list the folder', 'kept notes, with this week’s findings'], withFindings);
printRow('The same with this week’s findings', '', withSpread(withFindings.ratio, ' times'));

const firstView = await compare(
  () => loaded(),
  () =>
    new Promise<void>((resolve) => {
      let isRead = false;
      const collection = new JournalCollection(source);
      void collection.load({
        first: isFirst,
        shouldStop: () => isRead,
        onFirstRead: () => {
          isRead = true;
          resolve();
        },
      });
    }),
  effort,
);
printComparison(['the whole journal', 'the notes of the first view'], firstView);
printRow(
  'First view (this month’s notes and those that plan), share of a cold start',
  '',
  withSpread(firstView.ratio, ''),
);
