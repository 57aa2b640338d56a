/**
 * What earlier searches of a block have found out about the weeks that follow a border state. The same
 * states cross a border again and again, whatever lies before them.
 */
import { type Cost, compareCosts } from './cost';
import type { BorderState } from './week-search';

/** The rest of the block from a border state on. */
export interface KnownRest {
  /** No way to go on costs less. */
  readonly least: Cost;
  /** Ids of the places of a way that costs exactly this, when one is known. */
  readonly places: readonly number[] | undefined;
}

/** A memory of rests, by week and burdens. */
export class KnownRests {
  private readonly byState = new Map<string, KnownRest>();

  /** What is known about the rest from a state on. */
  of(state: BorderState): KnownRest | undefined {
    return this.byState.get(keyOf(state));
  }

  /** Every plan through this state costs at least `total`. */
  learnBound(state: BorderState, total: Cost): void {
    const known = this.of(state);
    const least = differenceOf(total, state.cost);
    if (known === undefined || (known.places === undefined && compareCosts(known.least, least) < 0)) {
      this.byState.set(keyOf(state), { least, places: undefined });
    }
  }

  /** The best plan from a start on, as it passes its borders: each way on is the best from that state. */
  learnPlan(end: BorderState): void {
    let places: readonly number[] = [];
    for (let state = end; state.previous?.previous !== undefined; state = state.previous) {
      places = [...state.places, ...places];
      this.byState.set(keyOf(state.previous), {
        least: differenceOf(end.cost, state.previous.cost),
        places,
      });
    }
  }
}

function keyOf(state: BorderState): string {
  return `${state.week}:${state.burdens.join()}`;
}

function differenceOf(a: Cost, b: Cost): Cost {
  return a.map((limb, index) => limb - (b[index] as number));
}
