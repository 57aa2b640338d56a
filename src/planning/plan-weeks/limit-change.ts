import type { Journal } from '../../journal/journal';
import type { RuleEntry } from '../../notation/entries';
import { setFieldEdits } from '../../notation/write-entry';
import type { NoteChange } from '../note-change';
import { addRuleLine } from '../rule-line';
import type { ProblemSource } from '../week-problem/problem-source';

/** A limit of a `#rule` or `#need` line as it would read, such as `gap:48h`. */
export interface LimitField {
  readonly name: 'gap' | 'min' | 'max' | 'cap';
  readonly text: string;
}

/** A length of whole minutes in the notation: `48h`, `2h30`, `45min`. */
export function writtenLength(minutes: number): string {
  const hours = Math.floor(minutes / 60);
  const rest = minutes % 60;
  if (hours === 0) return `${rest}min`;
  return rest === 0 ? `${hours}h` : `${hours}h${String(rest).padStart(2, '0')}`;
}

function presentField(entry: RuleEntry, name: LimitField['name']) {
  switch (name) {
    case 'gap':
      return entry.gap;
    case 'min':
      return entry.min;
    case 'max':
      return entry.max;
    case 'cap':
      return entry.cap;
  }
}

/**
 * The change that writes a limit into the line that sets it, or, for a rule that holds without a line, as a line beside
 * the journal's other rules. None for what is no limit.
 */
export function limitChange(
  journal: Journal,
  source: ProblemSource,
  field: LimitField,
): readonly NoteChange[] {
  if (source.about === 'rule') {
    const { written, subject } = source.rule;
    if (!written) return addRuleLine(journal, `#rule ${subject} ${field.name}:${field.text}`);
    const note = journal.note(written.note);
    if (!note) return [];
    const edits = setFieldEdits(note.text, written.entry, presentField(written.entry, field.name), field);
    return [{ kind: 'edit', note: note.path, before: note.text, edits }];
  }
  if (source.about !== 'need' || (field.name !== 'gap' && field.name !== 'max')) return [];
  const note = journal.note(source.need.note);
  if (!note) return [];
  const { entry } = source.need;
  const present = field.name === 'gap' ? entry.gap : entry.max;
  const edits = setFieldEdits(note.text, entry, present, field);
  return [{ kind: 'edit', note: note.path, before: note.text, edits }];
}
