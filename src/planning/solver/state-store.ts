/**
 * The states of a search, row by row in flat arrays.
 *
 * A state is what the past leaves to the future: its *burdens* (each a number of which less is never
 * worse: how long a gap still runs, how recent the last hard session is, how much of the day's cap is
 * used), how many sessions of each need stand this week, and its cost so far.
 */
import type { Cost } from './cost';

const FIRST_CAPACITY = 512;

/** A growing table of states, addressed by their row. Nothing is ever removed. */
export class StateStore {
  /** Burdens, then counts, `width` numbers a row. */
  numbers: Int32Array;
  /** Cost so far, `limbs` numbers a row. */
  costs: Float64Array;
  /** Cost so far and lower bound of the rest, `limbs` numbers a row. */
  estimates: Float64Array;
  /** The state before the last placed session; -1 for a start. */
  parents: Int32Array;
  /** The place taken last; for a start, its index among the starts. */
  taken: Int32Array;
  /** A number that differs where the counts differ. */
  keys: Float64Array;
  /** Sum of the burdens when last weighed: a state with no burden larger has no larger sum. */
  loads: Float64Array;
  /** 1 once another state has made this one needless. */
  needless: Uint8Array;
  readonly width: number;
  size = 0;
  private capacity = FIRST_CAPACITY;

  constructor(
    readonly burdens: number,
    counts: number,
    readonly limbs: number,
  ) {
    this.width = burdens + counts;
    this.numbers = new Int32Array(FIRST_CAPACITY * this.width);
    this.costs = new Float64Array(FIRST_CAPACITY * limbs);
    this.estimates = new Float64Array(FIRST_CAPACITY * limbs);
    this.parents = new Int32Array(FIRST_CAPACITY);
    this.taken = new Int32Array(FIRST_CAPACITY);
    this.keys = new Float64Array(FIRST_CAPACITY);
    this.loads = new Float64Array(FIRST_CAPACITY);
    this.needless = new Uint8Array(FIRST_CAPACITY);
  }

  /** One burden of a state. */
  burden(state: number, burden: number): number {
    return this.numbers[state * this.width + burden] as number;
  }

  /** How many sessions of a need, by its slot, stand in a state. */
  counted(state: number, slot: number): number {
    return this.numbers[state * this.width + this.burdens + slot] as number;
  }

  /** Makes room for a row at `size`. It counts only once `size` is raised. */
  reserve(): void {
    if (this.size < this.capacity) return;
    this.capacity *= 2;
    this.numbers = enlarge(this.numbers, new Int32Array(this.capacity * this.width));
    this.costs = enlarge(this.costs, new Float64Array(this.capacity * this.limbs));
    this.estimates = enlarge(this.estimates, new Float64Array(this.capacity * this.limbs));
    this.parents = enlarge(this.parents, new Int32Array(this.capacity));
    this.taken = enlarge(this.taken, new Int32Array(this.capacity));
    this.keys = enlarge(this.keys, new Float64Array(this.capacity));
    this.loads = enlarge(this.loads, new Float64Array(this.capacity));
    const needless = new Uint8Array(this.capacity);
    needless.set(this.needless);
    this.needless = needless;
  }

  /** Copies burdens, counts, key and cost of row `from` to row `to`. */
  copy(from: number, to: number): void {
    const { width, limbs } = this;
    this.numbers.copyWithin(to * width, from * width, (from + 1) * width);
    this.costs.copyWithin(to * limbs, from * limbs, (from + 1) * limbs);
    this.keys[to] = this.keys[from] as number;
    this.needless[to] = 0;
  }

  /** Adds `times` a cost to the cost so far. */
  addCost(state: number, cost: Cost, times: number): void {
    const { costs, limbs } = this;
    for (let limb = 0, at = state * limbs; limb < limbs; limb += 1, at += 1) {
      costs[at] = (costs[at] as number) + times * (cost[limb] as number);
    }
  }

  /** Sums the burdens of a state anew. */
  weigh(state: number): void {
    const { numbers, width, burdens } = this;
    let load = 0;
    for (let at = state * width; at < state * width + burdens; at += 1) load += numbers[at] as number;
    this.loads[state] = load;
  }

  /** The cost so far, as a value. */
  costOf(state: number): Cost {
    return this.costs.slice(state * this.limbs, (state + 1) * this.limbs);
  }

  /** The estimate, as a value. */
  estimateOf(state: number): Cost {
    return this.estimates.slice(state * this.limbs, (state + 1) * this.limbs);
  }

  /** Whether the estimate of a state is at least `ceiling`. */
  reaches(state: number, ceiling: Cost): boolean {
    const { estimates, limbs } = this;
    for (let limb = 0, at = state * limbs; limb < limbs; limb += 1, at += 1) {
      const difference = (estimates[at] as number) - (ceiling[limb] as number);
      if (difference !== 0) return difference > 0;
    }
    return true;
  }

  /** Orders states by estimate, then by age, so that the order never depends on chance. */
  compareEstimates(a: number, b: number): number {
    return compareRows(this.estimates, a, b, this.limbs) || a - b;
  }

  /** Orders states by cost so far. */
  compareCosts(a: number, b: number): number {
    return compareRows(this.costs, a, b, this.limbs);
  }

  /** Whether no burden of `a` is larger than that of `b`. */
  isAtMostAsBurdened(a: number, b: number): boolean {
    const { numbers, width } = this;
    const last = a * width + this.burdens;
    for (let at = a * width, other = b * width; at < last; at += 1, other += 1) {
      if ((numbers[at] as number) > (numbers[other] as number)) return false;
    }
    return true;
  }
}

function enlarge<T extends Int32Array | Float64Array>(old: T, larger: T): T {
  larger.set(old);
  return larger;
}

function compareRows(costs: Float64Array, a: number, b: number, limbs: number): number {
  for (let limb = 0; limb < limbs; limb += 1) {
    const difference = (costs[a * limbs + limb] as number) - (costs[b * limbs + limb] as number);
    if (difference !== 0) return difference;
  }
  return 0;
}
