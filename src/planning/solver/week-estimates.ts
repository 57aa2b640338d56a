/**
 * What each state of a week must cost in the end, at least: its cost so far, a lower bound of what its open needs and
 * minima must still cost, and the lower bound of the later weeks.
 */
import type { BurdenLayout } from './burdens';
import { type Cost, compareCosts, sumOf } from './cost';
import type { NeedBound } from './need-bound';
import type { StateStore } from './state-store';
import type { PreparedDay, PreparedNeed, PreparedProblem, PreparedWeek, WeekRest } from './tables';
import type { WeekBound } from './week-bound';

/** What the estimates of a week are made of. */
export interface WeekEstimateInput {
  readonly prepared: PreparedProblem;
  readonly layout: BurdenLayout;
  readonly week: PreparedWeek;
  /** For each need of the week, by slot. */
  readonly needBounds: readonly NeedBound[];
  readonly weekBound: WeekBound | undefined;
  /** Lower bound of all later weeks together. */
  readonly later: Cost;
}

/** The estimates of the states of one week. */
export class WeekEstimates {
  constructor(
    private readonly store: StateStore,
    private readonly input: WeekEstimateInput,
  ) {}

  /** Cost so far, the least that the open needs must still cost, and the later weeks. */
  estimate(state: number, day: PreparedDay): void {
    const { store } = this;
    const { week, needBounds, later, prepared } = this.input;
    const { costs, estimates, limbs } = store;
    const row = state * limbs;
    for (let limb = 0; limb < limbs; limb += 1) {
      estimates[row + limb] = (costs[row + limb] as number) + (later[limb] as number);
    }
    for (const need of week.needs) {
      const bound = needBounds[need.slot] as NeedBound;
      const from = bound.firstPlaceFrom[this.store.burden(state, need.signature)] as number;
      const left = need.count - this.store.counted(state, need.slot);
      const least = (from * (need.count + 1) + left) * limbs;
      for (let limb = 0; limb < limbs; limb += 1) {
        estimates[row + limb] = (estimates[row + limb] as number) + (bound.least[least + limb] as number);
      }
    }
    const missing = this.certainShortfall(state, day);
    if (missing === 0) return;
    for (let limb = 0; limb < limbs; limb += 1) {
      const unit = prepared.shortfallUnit[limb] as number;
      estimates[row + limb] = (estimates[row + limb] as number) + missing * unit;
    }
  }

  /** Sessions of a minimum that can no longer be placed, and rest days that are already lost. */
  private certainShortfall(state: number, day: PreparedDay): number {
    const { week, needBounds, layout } = this.input;
    let certain = 0;
    for (let rule = 0; rule < layout.rests; rule += 1) {
      const { free } = week.rests[rule] as WeekRest;
      const trained = this.store.burden(state, layout.trained + rule) + (day.trainedLater[rule] as number);
      if (trained > free) certain += trained - free;
    }
    for (const rule of week.counts) {
      let { missing } = rule;
      if (missing <= 0) continue;
      for (const slot of rule.slots) {
        const need = week.needs[slot] as PreparedNeed;
        const bound = needBounds[slot] as NeedBound;
        const from = bound.firstPlaceFrom[this.store.burden(state, need.signature)] as number;
        const counted = this.store.counted(state, slot);
        missing -= counted + Math.min(need.count - counted, bound.holds[from] as number);
      }
      if (missing > 0) certain += missing;
    }
    return certain;
  }

  /** At the beginning of a day, raises an estimate to what the bound of the whole week says. */
  raiseAtDayBreak(state: number, day: PreparedDay): void {
    const { store } = this;
    const { layout, weekBound, later, week } = this.input;
    if (weekBound === undefined) return;
    let due = 0;
    for (let rule = 0; rule < layout.rows; rule += 1)
      due |= this.store.burden(state, layout.rowDue + rule) << rule;
    const rest = weekBound.least({
      day: week.days.indexOf(day),
      counts: week.needs.map((need) => this.store.counted(state, need.slot)),
      due,
      trained: week.rests.map((_, rule) => this.store.burden(state, layout.trainedWithMore + rule) - 1),
    });
    const bound = sumOf(sumOf(store.costOf(state), rest), later);
    if (compareCosts(store.estimateOf(state), bound) < 0) store.estimates.set(bound, state * store.limbs);
  }
}
