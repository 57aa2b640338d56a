/**
 * The search through one week: from the states that cross its beginning to those that cross its end.
 *
 * The week is walked in time. At every moment at which a session could start, each live state either
 * leaves the moment alone or branches into a state that takes one of its places. A state is cut off when
 * its cost and the lower bound of what must follow reach the ceiling (a plan that good is known), or when
 * another state makes it needless. Interchangeable sessions are never told apart: a state counts how many
 * of a need stand, not which.
 *
 * Only what cannot be better is cut off, so the search is exact, unless a `width` says that only so many of
 * the most promising states are followed from each day: that is a quick look for a good plan.
 */
import { missingAir } from './air';
import { LONG_AGO } from './burdens';
import { type Cost, sumOf } from './cost';
import { LiveStates } from './live-states';
import type { StandingSession } from './problem';
import { StateStore } from './state-store';
import type { Place, PreparedDay, PreparedNeed } from './tables';
import { type WeekEstimateInput, WeekEstimates } from './week-estimates';

/** How many times more states than its width a quick look may follow within a day. */
const CROWD = 8;

/** A state on the border of two weeks, and how it was reached. */
export interface BorderState {
  /** The week that begins here. */
  readonly week: number;
  readonly burdens: Int32Array;
  readonly cost: Cost;
  /** Cost so far and lower bound of the weeks that follow. */
  readonly estimate: Cost;
  readonly previous: BorderState | undefined;
  /** Ids of the places taken since `previous`, by start. */
  readonly places: readonly number[];
}

/** What the search through one week needs to know. */
export interface WeekSearchInput extends WeekEstimateInput {
  /** Only plans below this are looked for. */
  readonly ceiling: Cost;
  /** How many states to follow from each day, and some times as many within it. */
  readonly width: number;
  /** When given, only these places are tried. */
  readonly only?: ReadonlySet<number>;
}

/** The search through one week. Use once. */
export class WeekSearch {
  /** States made so far. */
  nodes = 0;
  private readonly store: StateStore;
  private readonly estimates: WeekEstimates;
  private live: LiveStates;
  private day: PreparedDay;
  /** What one session of each need adds to a state's key. */
  private readonly keySteps: readonly number[];

  constructor(private readonly input: WeekSearchInput) {
    const { prepared, layout, week } = input;
    this.store = new StateStore(layout.length, week.needs.length, prepared.layout.limbs);
    this.estimates = new WeekEstimates(this.store, input);
    this.live = new LiveStates(this.store);
    this.day = week.days[0] as PreparedDay;
    let step = 1;
    this.keySteps = week.needs.map((need) => {
      const own = step;
      step *= need.count + 1;
      return own;
    });
  }

  /**
   * Runs the search. It yields often, so that whoever drives it may pause or stop.
   * @returns the states at the end of the week, the most promising first.
   */
  *run(starts: readonly BorderState[]): Generator<void, readonly BorderState[], void> {
    const { week, only, width } = this.input;
    this.begin(starts);
    for (const day of week.days) {
      this.beginDay(day);
      for (const moment of day.moments) {
        this.passStanding(moment.standing);
        // States made now cannot start another session at the same moment.
        const { taken } = this.live;
        for (const place of moment.places) {
          if (only !== undefined && !only.has(place.id)) continue;
          for (let index = 0; index < taken; index += 1) {
            const state = this.live.at(index);
            if (state >= 0 && this.allows(state, place)) this.take(state, place);
          }
          yield;
        }
        // A quick look must stay quick on a day that leaves everything open, too.
        if (this.live.taken > width * CROWD) this.choose();
      }
      this.endDay(day);
    }
    return this.end(starts);
  }

  private begin(starts: readonly BorderState[]): void {
    const { store } = this;
    starts.forEach((start, index) => {
      store.reserve();
      const state = store.size;
      store.size += 1;
      store.numbers.set(start.burdens, state * store.width);
      store.costs.set(start.cost, state * store.limbs);
      store.parents[state] = -1;
      store.taken[state] = index;
      this.live.add(state);
    });
  }

  private beginDay(day: PreparedDay): void {
    const { store } = this;
    this.day = day;
    const { layout } = this.input;
    for (const state of this.live.list()) {
      const row = state * store.width;
      for (let rule = 0; rule < layout.rows; rule += 1) {
        if (day.standsInRow[rule] === true) this.holdRow(state, rule);
      }
      for (let rule = 0; rule < layout.rests; rule += 1) {
        const trained = this.store.burden(state, layout.trained + rule) + 1;
        store.numbers[row + layout.trainedWithMore + rule] = trained;
        if (day.standsInRest[rule] === true) store.numbers[row + layout.trained + rule] = trained;
      }
      for (let rule = 0; rule < layout.caps; rule += 1) {
        store.numbers[row + layout.used + rule] = day.capUsed[rule] as number;
      }
      this.estimates.estimate(state, day);
      this.estimates.raiseAtDayBreak(state, day);
    }
    this.choose();
  }

  /** Drops what has become hopeless or needless, and all but the most promising. */
  private choose(): void {
    const { store } = this;
    const { ceiling, width } = this.input;
    const promising = this.live
      .list()
      .filter((state) => !store.reaches(state, ceiling))
      .sort((a, b) => store.compareEstimates(a, b));
    this.live = new LiveStates(store);
    for (const state of promising) {
      if (this.live.taken >= width) return;
      this.live.add(state);
    }
  }

  private endDay(day: PreparedDay): void {
    const { store } = this;
    const { layout, prepared } = this.input;
    for (const state of this.live.list()) {
      const row = state * store.width;
      for (let signature = 0; signature < layout.signatures; signature += 1) {
        raise(store.numbers, row + signature, day.firstStartAfter[signature] as number);
      }
      prepared.airs.forEach((rule, index) => {
        const next = day.firstAirAfter[index] as number;
        if (this.store.burden(state, layout.air + index) + rule.comfortable > next) return;
        store.numbers[row + layout.air + index] = LONG_AGO;
      });
      for (let rule = 0; rule < layout.rows; rule += 1) {
        store.numbers[row + layout.rowDue + rule] = this.store.burden(state, layout.today + rule);
      }
      store.numbers.fill(0, row + layout.today, row + layout.trained);
      store.numbers.fill(0, row + layout.trainedWithMore, row + layout.length);
    }
  }

  private end(starts: readonly BorderState[]): BorderState[] {
    const { store } = this;
    const { week, prepared, layout, later } = this.input;
    for (const state of this.live.list()) {
      for (const need of week.needs) {
        store.addCost(state, need.leftOut, need.count - this.store.counted(state, need.slot));
      }
      for (const rule of week.counts) {
        const missing = rule.slots.reduce(
          (left, slot) => left - this.store.counted(state, slot),
          rule.missing,
        );
        if (missing > 0) store.addCost(state, prepared.shortfallUnit, missing);
      }
      week.rests.forEach((rest, rule) => {
        const missing = this.store.burden(state, layout.trained + rule) - rest.free;
        if (missing > 0) store.addCost(state, prepared.shortfallUnit, missing);
      });
      const row = state * store.width;
      store.numbers.fill(0, row + layout.trained, row + store.width);
      store.keys[state] = 0;
      store.estimates.set(sumOf(store.costOf(state), later), state * store.limbs);
    }
    this.choose();
    return this.live.list().map((state) => this.borderState(state, starts));
  }

  private borderState(state: number, starts: readonly BorderState[]): BorderState {
    const { store } = this;
    const places: number[] = [];
    let at = state;
    for (; store.parents[at] !== -1; at = store.parents[at] as number) places.push(store.taken[at] as number);
    const row = state * store.width;
    return {
      week: this.input.week.index + 1,
      burdens: store.numbers.slice(row, row + store.burdens),
      cost: store.costOf(state),
      estimate: store.estimateOf(state),
      previous: starts[store.taken[at] as number],
      places: places.reverse(),
    };
  }

  /** Standing sessions pass: they may lack air, and are the last of their classes from now on. */
  private passStanding(sessions: readonly StandingSession[]): void {
    if (sessions.length === 0) return;
    const { store } = this;
    const { layout, prepared } = this.input;
    const roles = sessions.map((session) => ({ session, ...prepared.airRoles(session.labels) }));
    for (const state of this.live.list()) {
      const row = state * store.width + layout.air;
      for (const { session, later } of roles) {
        for (const rule of later) this.chargeAir(state, rule, session.start);
      }
      for (const { session, earlier } of roles) {
        for (const rule of earlier) raise(store.numbers, row + rule, session.end);
      }
    }
    this.live.weighAgain();
  }

  private chargeAir(state: number, index: number, start: number): void {
    const { prepared, layout } = this.input;
    const rule = prepared.airs[index];
    const last = this.store.burden(state, layout.air + index);
    if (rule === undefined || last === LONG_AGO) return;
    const missing = missingAir(rule, start - last);
    if (missing > 0) this.store.addCost(state, prepared.airUnit, missing);
  }

  /** Today holds a session of a row rule's class. */
  private holdRow(state: number, rule: number): void {
    const { store } = this;
    const { layout, prepared } = this.input;
    const row = state * store.width;
    store.numbers[row + layout.today + rule] = 1;
    if (store.numbers[row + layout.rowDue + rule] === 0) return;
    store.numbers[row + layout.rowDue + rule] = 0;
    store.addCost(state, prepared.rowUnit, 1);
  }

  private allows(state: number, place: Place): boolean {
    const { layout, week } = this.input;
    const { day } = this;
    const { need } = place;
    if (this.store.counted(state, need.slot) >= need.count) return false;
    if (this.store.burden(state, need.signature) > place.startIndex) return false;
    for (const rule of need.caps) {
      const minutes = this.store.burden(state, layout.used + rule) + place.end - place.start;
      if (minutes > (day.capLimit[rule] as number)) return false;
    }
    for (const rule of need.counts) {
      const limit = week.counts[rule];
      if (limit === undefined || limit.room === Infinity) continue;
      let sessions = 1;
      for (const slot of limit.slots) sessions += this.store.counted(state, slot);
      if (sessions > limit.room) return false;
    }
    for (const rule of need.rests) {
      const trained =
        this.store.burden(state, layout.trainedWithMore + rule) + (day.trainedLater[rule] as number);
      if (trained > (week.rests[rule]?.largest ?? 7)) return false;
    }
    return true;
  }

  private take(before: number, place: Place): void {
    const { store } = this;
    const { layout } = this.input;
    const { need } = place;
    this.nodes += 1;
    store.reserve();
    const state = store.size;
    const row = state * store.width;
    const { numbers } = store;
    store.copy(before, state);
    store.addCost(state, place.cost, 1);
    for (const rule of need.airLater) this.chargeAir(state, rule, place.start);
    for (const rule of need.airEarlier) raise(numbers, row + layout.air + rule, place.end);
    for (let signature = 0; signature < layout.signatures; signature += 1) {
      raise(numbers, row + signature, place.releases[signature] as number);
    }
    for (const rule of need.rows) this.holdRow(state, rule);
    for (const rule of need.rests) {
      numbers[row + layout.trained + rule] = numbers[row + layout.trainedWithMore + rule] as number;
    }
    for (const rule of need.caps) {
      const at = row + layout.used + rule;
      numbers[at] = (numbers[at] as number) + place.end - place.start;
    }
    const at = row + store.burdens + need.slot;
    numbers[at] = (numbers[at] as number) + 1;
    store.keys[state] = (store.keys[state] as number) + (this.keySteps[need.slot] as number);
    store.parents[state] = before;
    store.taken[state] = place.id;
    if (numbers[at] === need.count) this.forgetSettled(state);
    this.estimates.estimate(state, this.day);
    if (!store.reaches(state, this.input.ceiling) && this.live.add(state)) store.size += 1;
  }

  /**
   * A burden that no session of this week can feel any more is set to what later weeks feel of it, so
   * that states which differ only in the past become the same.
   */
  private forgetSettled(state: number): void {
    const { layout, week, prepared } = this.input;
    const { numbers, width } = this.store;
    const lastDay = week.days[6] as PreparedDay;
    const row = state * width;
    for (let signature = 0; signature < layout.signatures; signature += 1) {
      if (this.anyOpen(state, week.needsOfSignature[signature] ?? [])) continue;
      raise(numbers, row + signature, lastDay.firstStartAfter[signature] as number);
    }
    prepared.airs.forEach((rule, index) => {
      if (week.airStands[index] === true || this.anyOpen(state, week.needsOfAir[index] ?? [])) return;
      const last = numbers[row + layout.air + index] as number;
      if (last + rule.comfortable <= (lastDay.firstAirAfter[index] as number)) {
        numbers[row + layout.air + index] = LONG_AGO;
      }
    });
  }

  private anyOpen(state: number, needs: readonly PreparedNeed[]): boolean {
    for (const need of needs) if (this.store.counted(state, need.slot) < need.count) return true;
    return false;
  }
}

function raise(numbers: Int32Array, at: number, value: number): void {
  if ((numbers[at] as number) < value) numbers[at] = value;
}
