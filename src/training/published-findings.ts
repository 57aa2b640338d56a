import type { Journal, JournalPlan } from '../journal/journal';
import type { Note, NotePath } from '../journal/note';
import { daysOfWeek, type IsoWeek, isoWeekOf } from '../notation/time/iso-week';
import { checkGoals } from './check-goals';
import { KeptHistory } from './check-history';
import { checkNote } from './check-note';
import { checkWeekIn } from './check-week';
import type { Finding } from './finding';
import { inOrder } from './finding-order';
import { unreadableCalendars } from './unreadable-calendar';
import { type CheckContext, type CheckOptions, checkContext } from './week-under-check';

/** What a person looks at: the weeks around today, and notes that are open whatever their age. */
export interface FindingsView extends CheckOptions {
  readonly weeks: readonly IsoWeek[];
  readonly openNotes: ReadonlySet<NotePath>;
}

interface CheckedNote {
  readonly note: Note;
  readonly plan: JournalPlan;
  readonly findings: readonly Finding[];
}

function weekOfNote(note: Note): IsoWeek | undefined {
  return note.name.kind === 'day' ? isoWeekOf(note.name.date) : undefined;
}

/**
 * The findings of one journal as they are shown: those of the weeks in view, of the goals, and of every note that
 * is not an old day note. An open day note of another week shows what stands in it. Notes that did not change are
 * not checked again.
 */
export class PublishedFindings {
  readonly #journal: Journal;
  readonly #history = new KeptHistory();
  /** Every note that is not a day note, once the journal has been looked through. */
  #others: Map<NotePath, Note> | undefined;
  /** What stands in those, where anything does, under the plan with which they were checked. */
  readonly #inOthers = new Map<NotePath, readonly Finding[]>();
  #planOfOthers: JournalPlan | undefined;
  /** The day notes in view. */
  #checked = new Map<NotePath, CheckedNote>();
  #byNote = new Map<NotePath, readonly Finding[]>();

  constructor(journal: Journal) {
    this.#journal = journal;
  }

  /** The findings of a note as of the last {@link refresh}. */
  of(note: NotePath): readonly Finding[] {
    return this.#byNote.get(note) ?? [];
  }

  /** How many findings are shown, for a summary. */
  get all(): readonly Finding[] {
    return [...this.#byNote.values()].flat();
  }

  /**
   * Checks again what is in view.
   * @param changed Notes that were added, changed or removed since the last call; all of them when left out.
   * @returns The notes whose findings are not what they were.
   */
  refresh(view: FindingsView, changed?: ReadonlySet<NotePath>): ReadonlySet<NotePath> {
    this.#checkOthers(changed);
    const context = checkContext(this.#journal, view);
    const found = [
      ...this.#noteFindings(view),
      ...unreadableCalendars(this.#journal),
      ...checkGoals(this.#journal, view),
      ...this.#weekFindings(view, context),
      ...this.#history.check(context),
    ];
    const byNote = new Map<NotePath, Finding[]>();
    for (const finding of inOrder(found)) {
      const others = byNote.get(finding.note);
      if (others) others.push(finding);
      else byNote.set(finding.note, [finding]);
    }
    const touched = new Set<NotePath>();
    for (const path of new Set([...byNote.keys(), ...this.#byNote.keys()]))
      if (JSON.stringify(byNote.get(path)) !== JSON.stringify(this.#byNote.get(path))) touched.add(path);
    this.#byNote = byNote;
    return touched;
  }

  /** Keeps the notes that are no day notes, without a walk through years of notes at each keystroke. */
  #followOthers(changed: ReadonlySet<NotePath> | undefined): ReadonlyMap<NotePath, Note> {
    if (!this.#others || !changed) {
      const all = [...this.#journal.notes()].filter((note) => note.name.kind !== 'day');
      this.#others = new Map(all.map((note) => [note.path, note]));
      return this.#others;
    }
    for (const path of changed) {
      const note = this.#journal.note(path);
      if (note && note.name.kind !== 'day') this.#others.set(path, note);
      else this.#others.delete(path);
    }
    return this.#others;
  }

  /** Checks the notes again that are no day notes: those that changed, or all of them under another plan. */
  #checkOthers(changed: ReadonlySet<NotePath> | undefined): void {
    const others = this.#followOthers(changed);
    const { plan } = this.#journal;
    const again = changed && this.#planOfOthers === plan ? changed : undefined;
    if (!again) this.#inOthers.clear();
    this.#planOfOthers = plan;
    for (const path of again ?? others.keys()) {
      const note = others.get(path);
      const findings = note ? checkNote(note, this.#journal) : [];
      if (findings.length > 0) this.#inOthers.set(path, findings);
      else this.#inOthers.delete(path);
    }
  }

  #dayNotesInView(view: FindingsView): ReadonlySet<Note> {
    const notes = new Set<Note>();
    for (const week of view.weeks)
      for (const day of daysOfWeek(week)) for (const note of this.#journal.notesOf(day)) notes.add(note);
    for (const path of view.openNotes) {
      const note = this.#journal.note(path);
      if (note?.name.kind === 'day') notes.add(note);
    }
    return notes;
  }

  #noteFindings(view: FindingsView): readonly Finding[] {
    const { plan } = this.#journal;
    const checked = new Map<NotePath, CheckedNote>();
    for (const note of this.#dayNotesInView(view)) {
      const before = this.#checked.get(note.path);
      const known = before?.note === note && before.plan === plan ? before : undefined;
      checked.set(note.path, known ?? { note, plan, findings: checkNote(note, this.#journal) });
    }
    this.#checked = checked;
    return [...[...checked.values()].flatMap((one) => one.findings), ...[...this.#inOthers.values()].flat()];
  }

  #weekFindings(view: FindingsView, context: CheckContext): readonly Finding[] {
    const inView = new Set(view.weeks);
    const found = view.weeks.flatMap((week) => checkWeekIn(context, week));
    const others = new Set<IsoWeek>();
    for (const path of view.openNotes) {
      const note = this.#journal.note(path);
      const week = note && weekOfNote(note);
      if (week !== undefined && !inView.has(week)) others.add(week);
    }
    for (const week of others)
      found.push(
        ...checkWeekIn(context, week).filter(
          (finding) => view.openNotes.has(finding.note) && this.#isDayNote(finding.note),
        ),
      );
    return found;
  }

  #isDayNote(path: NotePath): boolean {
    return this.#journal.note(path)?.name.kind === 'day';
  }
}
