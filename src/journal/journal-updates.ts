import type { DayNumber } from '../notation/time/iso-date';
import type { Journal, JournalChange } from './journal';
import type { NotePath } from './note';

/** What happened to one journal since the last time it was told. */
export interface JournalUpdate {
  readonly journal: Journal;
  readonly kind: 'added' | 'changed' | 'removed';
  /** Notes that were added, changed or removed. */
  readonly notes: ReadonlySet<NotePath>;
  readonly change: JournalChange;
}

interface Gathered {
  readonly journal: Journal;
  kind: JournalUpdate['kind'];
  readonly notes: Set<NotePath>;
  readonly days: Set<DayNumber>;
  plan: boolean;
}

/** Gathers the changes of many notes until they are told at once. */
export class GatheredUpdates {
  readonly #journals = new Map<Journal, Gathered>();

  added(journal: Journal): void {
    this.#of(journal).kind = 'added';
  }

  /** A journal that came and went before anything was told of it is not told of at all. */
  removed(journal: Journal): void {
    const gathered = this.#of(journal);
    if (gathered.kind === 'added') this.#journals.delete(journal);
    else gathered.kind = 'removed';
  }

  changed(journal: Journal, note: NotePath, change: JournalChange): void {
    const gathered = this.#of(journal);
    gathered.notes.add(note);
    for (const day of change.days) gathered.days.add(day);
    gathered.plan ||= change.plan;
  }

  /** What was gathered, which is forgotten with it. */
  take(): readonly JournalUpdate[] {
    const updates = [...this.#journals.values()].map(({ journal, kind, notes, days, plan }) => ({
      journal,
      kind,
      notes,
      change: { days, plan },
    }));
    this.#journals.clear();
    return updates;
  }

  #of(journal: Journal): Gathered {
    let gathered = this.#journals.get(journal);
    if (!gathered) {
      gathered = { journal, kind: 'changed', notes: new Set(), days: new Set(), plan: false };
      this.#journals.set(journal, gathered);
    }
    return gathered;
  }
}
