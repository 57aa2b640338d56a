import { openJournalFile } from '../journal/calendar-file';
import type { Journal } from '../journal/journal';
import { JournalIndex } from '../journal/journal-index';
import type { NotePath } from '../journal/note';
import { applyTextEdits, type TextEdit } from '../notation/text-edit';
import { composeEdits } from './compose-edits';
import { joinChanges } from './join-changes';
import type { NoteChange } from './note-change';

/** A copy of a journal, whose notes are shared: nothing is read again. */
function copyOf(journal: Journal): JournalIndex {
  const copy = new JournalIndex(journal.root);
  for (const note of journal.notes()) copy.replace(note);
  for (const calendar of journal.plan.calendars) copy.replace(calendar);
  return copy;
}

/**
 * A journal in which changes stand one after the other without being written: each may build on those before it, and
 * all of them together are one change a note. The journal that it was made from stays as it is.
 */
export class DraftJournal {
  readonly #journal: JournalIndex;
  readonly #changes = new Map<NotePath, NoteChange>();

  constructor(original: Journal) {
    this.#journal = copyOf(original);
  }

  /** The journal with all changes so far. Ask anew after a change. */
  get journal(): Journal {
    return this.#journal;
  }

  /** All changes so far, one a note, as they are made to the journal that this one was made from. */
  get changes(): readonly NoteChange[] {
    return [...this.#changes.values()];
  }

  /** The same draft, to be changed on its own. */
  copy(): DraftJournal {
    const copy = new DraftJournal(this.#journal);
    for (const [note, change] of this.#changes) copy.#changes.set(note, change);
    return copy;
  }

  /**
   * Makes changes that were planned for {@link journal} as it is now.
   * @throws RangeError when a note reads otherwise than its change says, or is to be made and is there already.
   */
  write(changes: readonly NoteChange[]): void {
    for (const change of joinChanges(changes)) this.#writeOne(change);
  }

  #writeOne(change: NoteChange): void {
    const { note } = change;
    const now = this.#journal.note(note)?.text;
    if (change.kind === 'create') {
      if (now !== undefined) throw new RangeError(`${note} is there already.`);
      this.#changes.set(note, change);
      this.#journal.replace(openJournalFile(note, change.text));
      return;
    }
    if (now !== change.before) throw new RangeError(`${note} reads otherwise.`);
    const text = applyTextEdits(now, change.edits);
    this.#changes.set(note, this.#joined(change.note, now, change.edits, text));
    this.#journal.replace(openJournalFile(note, text));
  }

  #joined(note: NotePath, now: string, edits: readonly TextEdit[], text: string): NoteChange {
    const before = this.#changes.get(note);
    if (before?.kind === 'create') return { kind: 'create', note, text };
    if (!before) return { kind: 'edit', note, before: now, edits };
    return { ...before, edits: composeEdits(before.before.length, before.edits, edits) };
  }
}
