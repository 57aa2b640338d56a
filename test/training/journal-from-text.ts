import { openJournalFile } from '../../src/journal/calendar-file';
import { JournalIndex } from '../../src/journal/journal-index';
import { checkJournal } from '../../src/training/check-journal';
import { type Finding, type FindingCode, fillMessage } from '../../src/training/finding';
import { date } from './dates';

/** A journal with these notes: file names and their texts. */
export function journalFromNotes(notes: Readonly<Record<string, string>>): JournalIndex {
  const journal = new JournalIndex();
  for (const [path, text] of Object.entries(notes)) journal.replace(openJournalFile(path, text));
  return journal;
}

/** Everything that is found in the notes. */
export function findingsIn(
  notes: Readonly<Record<string, string>>,
  today: string,
  zone = 'UTC',
): readonly Finding[] {
  return checkJournal(journalFromNotes(notes), { today: date(today), zone });
}

/** What is found under one code, each as `note | severity | marked characters | sentence`. */
export function told(
  code: FindingCode,
  notes: Readonly<Record<string, string>>,
  today: string,
  zone?: string,
): readonly string[] {
  return findingsIn(notes, today, zone)
    .filter((finding) => finding.code === code)
    .map(({ note, severity, range, message }) => {
      const marked = notes[note]?.slice(range.start, range.end);
      return `${note} | ${severity} | ${marked} | ${fillMessage(message)}`;
    });
}
