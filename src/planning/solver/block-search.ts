/**
 * The search through a block: weeks joined by the states that cross their borders.
 *
 * The block is solved from its last week backwards, each time with one week more in front and nothing
 * before it. So when a week is searched, it is known exactly what the weeks after it cost at least, and
 * only what happens across one border is left open. The best plan of those weeks, followed as far as it
 * goes from a border state, gives a good plan of the whole at once. What is learned about border states
 * is kept for the next, longer solve. The last solve, with all weeks and the sessions before the horizon,
 * is the answer. A single week is a block of one.
 *
 * The first level of the order often decides how much must be searched, and the first plan found often
 * leaves out one session too many. Each solve therefore looks first only for plans that leave out no more
 * than the lower bound says, and allows one more each time that there is none.
 */
import { type BurdenLayout, LONG_AGO, layOutBurdens } from './burdens';
import { type Cost, compareCosts, costWith, sumOf, unpackCost, zeroCost } from './cost';
import { KnownRests } from './known-rests';
import { boundNeed, type NeedBound } from './need-bound';
import { belongsTo } from './problem';
import type { PreparedProblem, PreparedWeek } from './tables';
import { WeekBound } from './week-bound';
import { type BorderState, WeekSearch } from './week-search';

/** What a search of a block has found. */
export type BlockResult =
  /** The best plan, or, when the search was cut short, the best one found; no plan costs less than `bound`. */
  | {
      readonly found: 'plan';
      readonly cost: Cost;
      readonly bound: Cost;
      readonly places: readonly number[];
      readonly complete: boolean;
    }
  /** Proven: there is no plan below the ceiling. */
  | { readonly found: 'none' }
  /** Cut short before there was a plan below the ceiling. */
  | { readonly found: 'nothing yet' };

/** How many states a quick look follows. */
const NARROW = 32;
/** How many states a very quick look follows. */
const VERY_NARROW = 16;

/** The two lower bounds of a week. */
interface WeekBounds {
  readonly needs: readonly NeedBound[];
  readonly week: WeekBound | undefined;
  /** The least that the week costs, whatever lies before it. */
  readonly least: Cost;
}

/** The search through a block. Use once. */
export class BlockSearch {
  /** States made so far. */
  nodes = 0;
  private readonly layout: BurdenLayout;
  private readonly bounds: WeekBounds[] = [];
  /** For each week, the least that it and all later weeks cost when nothing before gets in their way. */
  private readonly least: Cost[];
  /** For each week solved so far, the places of the best plan from it on. */
  private readonly bestFrom: (readonly number[])[] = [];
  private readonly known = new KnownRests();
  /** The end of the best plan of the solve that is under way. */
  private best: BorderState | undefined;
  /** Only plans below this are looked for. */
  private ceiling: Cost;
  /** Whether the node limit has been reached. */
  private cutShort = false;

  /**
   * @param highest only plans below this cost are looked for.
   * @param nodeLimit how many states may be made, roughly, before the search is cut short.
   */
  constructor(
    private readonly prepared: PreparedProblem,
    private readonly highest: Cost,
    private nodeLimit: number,
  ) {
    this.layout = layOutBurdens(prepared);
    this.ceiling = highest;
    this.least = Array.from({ length: prepared.weeks.length + 1 }, () => zeroCost(prepared.layout));
  }

  /** Runs the search; yields often, each time the number of states made since the last time. */
  *run(): Generator<number, BlockResult, void> {
    const { weeks } = this.prepared;
    for (const week of weeks) {
      this.bounds.push(this.boundWeek(week));
      yield 0;
    }
    for (let first = weeks.length - 1; first >= 0; first -= 1) {
      const bound = yield* this.solveFrom(first);
      if (this.cutShort) return yield* this.quickResult(first, bound);
      if (this.best === undefined) return { found: 'none' };
      this.least[first] = this.best.cost;
      this.bestFrom[first] = placesOf(this.best);
      this.known.learnPlan(this.best);
    }
    const cost = this.least[0] as Cost;
    return { found: 'plan', cost, bound: cost, places: this.bestFrom[0] ?? [], complete: true };
  }

  private boundWeek(week: PreparedWeek): WeekBounds {
    const { prepared } = this;
    const needs = week.needs.map((need) => boundNeed(prepared, need));
    const weekBound = WeekBound.of(prepared, week);
    let least = zeroCost(prepared.layout);
    week.needs.forEach((need, slot) => {
      const { limbs } = prepared.layout;
      const cost = (needs[slot] as NeedBound).least.slice(need.count * limbs, (need.count + 1) * limbs);
      least = sumOf(least, cost);
    });
    const whole = weekBound?.least({
      day: 0,
      counts: week.needs.map(() => 0),
      due: 0,
      trained: week.rests.map(() => 0),
    });
    if (whole !== undefined && compareCosts(least, whole) < 0) least = whole;
    return { needs, week: weekBound, least };
  }

  /** Finds the best plan of the weeks from `first` on. @returns a lower bound of its cost. */
  private *solveFrom(first: number): Generator<number, Cost, void> {
    const start = this.start(first);
    this.best = undefined;
    this.ceiling = this.highest;
    let bound = sumOf((this.bounds[first] as WeekBounds).least, this.least[first + 1] as Cost);
    const glance = yield* this.searchWeek(first, [start], NARROW);
    yield* this.complete(glance, first + 1);
    while (!this.cutShort) {
      const target = this.nextTarget(bound);
      yield* this.searchBelow(target, start);
      if (this.cutShort || compareCosts(this.ceiling, target) <= 0) break;
      bound = target;
    }
    return bound;
  }

  /** The ceiling to try next: plans with no more left out than the bound says, as long as that is less. */
  private nextTarget(bound: Cost): Cost {
    const { layout } = this.prepared;
    if (layout.columns[0]?.level !== 'leftOut') return this.ceiling;
    const target = costWith(layout, [(unpackCost(layout, bound)[0]?.value ?? 0) + 1]);
    return compareCosts(target, this.ceiling) < 0 ? target : this.ceiling;
  }

  /** Searches all plans below `target`, or below the best plan as soon as that is less. */
  private *searchBelow(target: Cost, start: BorderState): Generator<number, void, void> {
    const { weeks } = this.prepared;
    const limit = () => (compareCosts(target, this.ceiling) < 0 ? target : this.ceiling);
    const followed: BorderState[] = [];
    let states: readonly BorderState[] = [start];
    for (let week = start.week; week < weeks.length && states.length > 0; week += 1) {
      const reached = yield* this.searchWeek(week, states, Infinity, limit());
      yield* this.complete(reached, week + 1);
      if (this.cutShort) return;
      for (const state of reached) this.completeAsKnown(state);
      states = reached.filter((state) => {
        const rest = this.known.of(state);
        if (rest?.places !== undefined || compareCosts(state.estimate, limit()) >= 0) return false;
        return rest === undefined || compareCosts(sumOf(state.cost, rest.least), limit()) < 0;
      });
      followed.push(...states);
    }
    for (const state of followed) this.known.learnBound(state, limit());
  }

  /** Completes a border state by the best way on, when an earlier solve has found it. */
  private completeAsKnown(state: BorderState): void {
    const rest = this.known.of(state);
    if (rest?.places === undefined) return;
    const cost = sumOf(state.cost, rest.least);
    const week = this.prepared.weeks.length;
    this.offer({
      week,
      burdens: new Int32Array(0),
      cost,
      estimate: cost,
      previous: state,
      places: rest.places,
    });
  }

  /** Completes the most promising states: a quick look at the next week, then the known plan of the rest. */
  private *complete(states: readonly BorderState[], from: number): Generator<number, void, void> {
    const { weeks } = this.prepared;
    let ends: readonly BorderState[] = states.slice(0, NARROW);
    for (let week = from; week < weeks.length && ends.length > 0; week += 1) {
      const known = week === from ? undefined : new Set(this.bestFrom[week]);
      ends = yield* this.searchWeek(
        week,
        ends,
        known === undefined ? VERY_NARROW : NARROW,
        this.ceiling,
        known,
      );
    }
    for (const end of ends) this.offer(end);
  }

  private offer(end: BorderState): void {
    if (compareCosts(end.cost, this.ceiling) >= 0) return;
    this.best = end;
    this.ceiling = end.cost;
  }

  private *searchWeek(
    index: number,
    starts: readonly BorderState[],
    width: number,
    ceiling: Cost = this.ceiling,
    only?: ReadonlySet<number>,
  ): Generator<number, readonly BorderState[], void> {
    const bounds = this.bounds[index] as WeekBounds;
    const search = new WeekSearch({
      prepared: this.prepared,
      layout: this.layout,
      week: this.prepared.weeks[index] as PreparedWeek,
      needBounds: bounds.needs,
      weekBound: bounds.week,
      later: this.least[index + 1] as Cost,
      ceiling,
      width,
      ...(only === undefined ? {} : { only }),
    });
    const steps = search.run(starts);
    let counted = 0;
    while (!this.cutShort) {
      const step = steps.next();
      const made = search.nodes - counted;
      counted = search.nodes;
      this.nodes += made;
      if (step.done === true) return step.value;
      this.cutShort = this.nodes > this.nodeLimit;
      yield made;
    }
    return [];
  }

  /** A quick plan of the whole block, for a search that was cut short while it solved from `first` on. */
  private *quickResult(first: number, boundFromFirst: Cost): Generator<number, BlockResult, void> {
    this.cutShort = false;
    this.nodeLimit = Infinity;
    this.least[first] = boundFromFirst;
    for (let week = first - 1; week >= 0; week -= 1) {
      this.least[week] = sumOf((this.bounds[week] as WeekBounds).least, this.least[week + 1] as Cost);
    }
    if (first > 0) {
      this.best = undefined;
      this.ceiling = this.highest;
    }
    let states: readonly BorderState[] = this.best === undefined ? [this.start(0)] : [];
    for (let week = 0; week < this.prepared.weeks.length; week += 1) {
      states = yield* this.searchWeek(week, states, NARROW);
    }
    for (const end of states) this.offer(end);
    if (this.best === undefined) return { found: 'nothing yet' };
    const bound = this.least[0] as Cost;
    return {
      found: 'plan',
      cost: this.best.cost,
      bound,
      places: placesOf(this.best),
      complete: compareCosts(this.best.cost, bound) === 0,
    };
  }

  /** The state before the first session: free of everything, or with the sessions before the horizon. */
  private start(week: number): BorderState {
    const { prepared, layout } = this;
    const burdens = new Int32Array(layout.length);
    burdens.fill(LONG_AGO, layout.air, layout.rowDue);
    for (const session of week === 0 ? prepared.problem.standing : []) {
      if (session.day >= 0) continue;
      for (const rule of prepared.airRoles(session.labels).earlier) {
        burdens[layout.air + rule] = Math.max(burdens[layout.air + rule] as number, session.end);
      }
      prepared.rows.forEach((rule, index) => {
        if (session.day === -1 && belongsTo(session.labels, rule.of)) burdens[layout.rowDue + index] = 1;
      });
    }
    const cost = zeroCost(prepared.layout);
    return { week, burdens, cost, estimate: cost, previous: undefined, places: [] };
  }
}

function placesOf(end: BorderState): number[] {
  const places: number[] = [];
  for (let state: BorderState | undefined = end; state !== undefined; state = state.previous) {
    places.unshift(...state.places);
  }
  return places;
}
