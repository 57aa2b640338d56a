/**
 * The states that are still worth following.
 *
 * Of two states with the same counts, one with no burden larger and no higher cost makes the other
 * needless: whatever can follow the other can follow it too, for no more.
 */
import type { StateStore } from './state-store';

/** A set of states none of which makes another needless. */
export class LiveStates {
  private readonly byCounts = new Map<number, number[]>();
  private readonly all: number[] = [];

  constructor(private readonly store: StateStore) {}

  /** How many states have been taken in, those included that have become needless since. */
  get taken(): number {
    return this.all.length;
  }

  /** The state taken in at an index below `taken`, or -1 when it has become needless since. */
  at(index: number): number {
    const state = this.all[index] as number;
    return this.store.needless[state] === 1 ? -1 : state;
  }

  /** Takes in a state unless a live one makes it needless. @returns whether it was taken in. */
  add(state: number): boolean {
    const { store } = this;
    store.weigh(state);
    const load = store.loads[state] as number;
    const key = store.keys[state] as number;
    const group = this.byCounts.get(key);
    if (group === undefined) {
      this.byCounts.set(key, [state]);
      this.all.push(state);
      return true;
    }
    for (let index = 0; index < group.length; index += 1) {
      const other = group[index] as number;
      const heavier = (store.loads[other] as number) - load;
      if (heavier <= 0 && store.compareCosts(other, state) <= 0 && store.isAtMostAsBurdened(other, state)) {
        return false;
      }
      if (heavier >= 0 && store.compareCosts(other, state) >= 0 && store.isAtMostAsBurdened(state, other)) {
        store.needless[other] = 1;
        group[index] = group[group.length - 1] as number;
        group.pop();
        index -= 1;
      }
    }
    group.push(state);
    this.all.push(state);
    return true;
  }

  /** To be called when burdens of live states have grown. */
  weighAgain(): void {
    for (const state of this.all) this.store.weigh(state);
  }

  /** The live states, in the order in which they were taken in. */
  list(): number[] {
    return this.all.filter((state) => this.store.needless[state] === 0);
  }
}
