import type { Journal } from '../../journal/journal';
import type { IsoDate } from '../../notation/time/iso-date';
import { type CheckOptions, checkContext } from '../week-under-check';
import { type AthleteFacts, athleteFacts } from './athlete-facts';

/** The facts of many athletes, worked out again only for those whose journal changed, and for all on another day. */
export class KeptFacts {
  readonly #kept = new Map<Journal, { readonly today: IsoDate; readonly facts: AthleteFacts }>();
  readonly #work: typeof athleteFacts;

  /** @param work How the facts of one athlete are worked out. */
  constructor(work = athleteFacts) {
    this.#work = work;
  }

  /** The facts of the athlete whose journal it is, as they are on the day of `options`. */
  of(journal: Journal, options: CheckOptions): AthleteFacts {
    const known = this.#kept.get(journal);
    if (known?.today === options.today) return known.facts;
    const facts = this.#work(checkContext(journal, options));
    this.#kept.set(journal, { today: options.today, facts });
    return facts;
  }

  /** To be called when a journal has changed, or is gone. */
  forget(journal: Journal): void {
    this.#kept.delete(journal);
  }
}
