import assert from 'node:assert/strict';
import { openJournalFile } from '../../src/journal/calendar-file';
import type { Journal, Session } from '../../src/journal/journal';
import { JournalIndex } from '../../src/journal/journal-index';
import { applyTextEdits } from '../../src/notation/text-edit';
import { dayNumber, type IsoDate, parseIsoDate } from '../../src/notation/time/iso-date';
import type { NoteChange } from '../../src/planning/note-change';

/** Notes by path. */
export type Notes = Readonly<Record<string, string>>;

/** A journal of these notes. */
export function journalOf(notes: Notes, root = ''): Journal {
  const journal = new JournalIndex(root);
  for (const [path, text] of Object.entries(notes)) journal.replace(openJournalFile(path, text));
  return journal;
}

/** A date that exists. */
export function date(text: string): IsoDate {
  const found = parseIsoDate(text);
  assert(found, `${text} is a date`);
  return found;
}

/** The one session of the day that `words` occur in. */
export function sessionOf(journal: Journal, day: string, words = ''): Session {
  const number = dayNumber(date(day));
  const found = journal
    .sessions(number, number)
    .filter(({ note, entry }) =>
      journal.note(note)?.text.slice(entry.range.start, entry.range.end).includes(words),
    );
  assert.equal(found.length, 1, `${found.length} sessions on ${day} with "${words}"`);
  return found[0] as Session;
}

/** The notes after the changes: what an adapter that writes them makes of the folder. */
export function applied(notes: Notes, changes: readonly NoteChange[]): Notes {
  const after: Record<string, string> = { ...notes };
  const touched = new Set<string>();
  for (const change of changes) {
    assert(!touched.has(change.note), `${change.note} is changed twice`);
    touched.add(change.note);
    if (change.kind === 'create') {
      assert(!(change.note in after), `${change.note} exists already`);
      after[change.note] = change.text;
    } else {
      assert.equal(after[change.note], change.before);
      after[change.note] = applyTextEdits(change.before, change.edits);
    }
  }
  return after;
}

/** Only the notes that differ after the changes. */
export function changed(notes: Notes, changes: readonly NoteChange[]): Notes {
  return Object.fromEntries(
    Object.entries(applied(notes, changes)).filter(([path, text]) => notes[path] !== text),
  );
}
