// From a keystroke in today's note to the findings that are published, in journals of different age.
import { JournalIndex } from '../../src/journal/journal-index';
import { openNote } from '../../src/journal/open-note';
import type { IsoDate } from '../../src/notation/time/iso-date';
import { addWeeks, isoWeekOf } from '../../src/notation/time/iso-week';
import { PublishedFindings } from '../../src/training/published-findings';
import { generateJournal } from './generate-journal';
import { measure, printMeasurement } from './measure';

const today = '2026-03-01' as IsoDate;
const path = `log/2026/${today}.md`;
const weeks = [-1, 0, 1, 2].map((offset) => addWeeks(isoWeekOf(today), offset));
const view = { today, zone: 'Europe/Lisbon', weeks, openNotes: new Set([path]) };

for (const dayNotes of [100, 1000, 10_000]) {
  const notes = generateJournal({ dayNotes, last: today, seed: 2026 });
  const journal = new JournalIndex('');
  for (const [note, text] of notes) journal.replace(openNote(note, text));
  const findings = new PublishedFindings(journal);
  findings.refresh(view);
  const text = notes.get(path) ?? '';
  let keys = 0;
  const keystroke = () => {
    keys += 1;
    journal.replace(openNote(path, `${text}${'x'.repeat(keys % 40)}\n`));
    return findings.refresh(view, new Set([path]));
  };
  printMeasurement(`keystroke to findings, ${dayNotes} day notes`, await measure(keystroke, { runs: 200 }));
}
