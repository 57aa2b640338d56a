import * as vscode from 'vscode';
import type { OpenJournals } from './open-journal';

/** A day begins within this time after midnight, also when the machine slept through it. */
const interval = 60_000;

/** Tells when another day begins in one of the journals. One for the whole extension. */
export class DayChange implements vscode.Disposable {
  readonly #changed = new vscode.EventEmitter<void>();
  readonly #timer: ReturnType<typeof setInterval>;
  readonly #journals: Pick<OpenJournals, 'all'>;
  readonly #subscription: vscode.Disposable;
  #days: ReadonlyMap<string, string>;

  readonly onDidChange = this.#changed.event;

  constructor(journals: Pick<OpenJournals, 'all' | 'onDidChange'>) {
    this.#journals = journals;
    this.#days = this.#daysNow();
    // A journal that has just come is known from its first day on.
    this.#subscription = journals.onDidChange(() => {
      this.#days = new Map([...this.#daysNow(), ...this.#days]);
    });
    this.#timer = setInterval(() => this.look(), interval);
  }

  /** Looks at the clock now. */
  look(): void {
    const before = this.#days;
    this.#days = this.#daysNow();
    const isOther = [...this.#days].some(([id, day]) => before.has(id) && before.get(id) !== day);
    if (isOther) this.#changed.fire();
  }

  dispose(): void {
    clearInterval(this.#timer);
    this.#subscription.dispose();
    this.#changed.dispose();
  }

  #daysNow(): ReadonlyMap<string, string> {
    return new Map(this.#journals.all().map((journal) => [journal.id, journal.today()]));
  }
}
