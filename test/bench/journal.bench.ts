// A journal of ten thousand day notes on a disk: reading it whole, and one keystroke in it.
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { JournalCollection } from '../../src/journal/journal-collection';
import { DiskNoteSource } from '../../src/journal/sources/disk-note-source';
import { dayNumber, type IsoDate } from '../../src/notation/time/iso-date';
import { generateJournal } from './generate-journal';
import { compare, measure, printComparison, printMeasurement } from './measure';

const last = '2026-03-01' as IsoDate;
const notes = generateJournal({ dayNotes: 10_000, last, seed: 2026 });
const folder = mkdtempSync(join(tmpdir(), 'bench-journal-'));

try {
  let characters = 0;
  for (const [path, text] of notes) {
    mkdirSync(join(folder, dirname(path)), { recursive: true });
    writeFileSync(join(folder, path), text);
    characters += text.length;
  }
  console.log(`${notes.size} notes, ${(characters / 1e6).toFixed(1)} MB`);

  const paths = [...notes.keys()].map((path) => join(folder, path));
  const readOnly = () => paths.reduce((sum, path) => sum + readFileSync(path, 'utf8').length, 0);
  const load = async () => {
    const collection = new JournalCollection(new DiskNoteSource(folder));
    await collection.load();
    return collection;
  };
  printComparison(
    ['read every file', 'list, read and index the journal'],
    await compare(readOnly, load, { warmUp: 1, runs: 3 }),
  );

  const collection = await load();
  const today = dayNumber(last);
  const path = `log/2026/${last}.md`;
  const text = notes.get(path) ?? '';
  let keys = 0;
  const keystroke = () => {
    keys += 1;
    collection.setOpenText(path, `${text}${'x'.repeat(keys % 40)}\n`);
    return collection.journalOf(path)?.sessions(today - 13, today);
  };
  printMeasurement('keystroke to the sessions of two weeks', await measure(keystroke, { runs: 200 }));
} finally {
  rmSync(folder, { recursive: true, force: true });
}
