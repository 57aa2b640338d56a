/**
 * Costs as the search adds and compares them.
 *
 * An objective has up to a dozen columns compared one after another. Adding and comparing them one by one
 * is slow, so neighbouring columns are packed into one number, the way digits make a number: each column
 * gets a place value larger than everything that can ever stand to its right. Such a number (a *limb*)
 * stays below 2^52 and is therefore exact; a cost is one to a few limbs, compared from the left. Sums and
 * comparisons of packed costs are exactly the sums and comparisons of the columns.
 */
import type { Level, Objective } from './order';

/** A column of the objective with the largest value that any plan can have there. */
export interface Column {
  readonly level: Level;
  readonly importance?: number;
  readonly largest: number;
}

/** A packed cost: limbs, the first counts most. */
export type Cost = Float64Array;

/** Where a column lies: its limb, and the value of one unit in it. */
export interface ColumnPlace {
  readonly limb: number;
  readonly unit: number;
}

const LIMB_LIMIT = 2 ** 52;

/** Thrown when a single column could exceed what a number holds exactly. */
export class CostTooLargeError extends Error {
  override readonly name = 'CostTooLargeError';
}

/** How the columns of one problem are packed. */
export interface CostLayout {
  readonly columns: readonly Column[];
  readonly places: readonly ColumnPlace[];
  readonly limbs: number;
}

/**
 * Packs columns, from the last to the first, into as few limbs as hold them.
 * @throws CostTooLargeError when one column alone exceeds 2^52.
 */
export function layOutCosts(columns: readonly Column[]): CostLayout {
  const fromTheRight: { limb: number; unit: number }[] = [];
  let limb = 0;
  let unit = 1;
  for (const column of [...columns].reverse()) {
    const digits = column.largest + 1;
    if (digits > LIMB_LIMIT) throw new CostTooLargeError(`The level ${column.level} can grow too large.`);
    if (unit * digits > LIMB_LIMIT) {
      limb += 1;
      unit = 1;
    }
    fromTheRight.push({ limb, unit });
    unit *= digits;
  }
  const places = fromTheRight.reverse().map((place) => ({ limb: limb - place.limb, unit: place.unit }));
  return { columns, places, limbs: limb + 1 };
}

/** A cost of zero at every level. */
export function zeroCost(layout: CostLayout): Cost {
  return new Float64Array(layout.limbs);
}

/** A cost above that of every plan. */
export function endlessCost(layout: CostLayout): Cost {
  return zeroCost(layout).fill(Infinity);
}

/** The packed cost of these values in the first columns, and 0 in the others. */
export function costWith(layout: CostLayout, values: readonly number[]): Cost {
  const cost = zeroCost(layout);
  values.forEach((value, index) => {
    const place = layout.places[index];
    if (place !== undefined) cost[place.limb] = (cost[place.limb] ?? 0) + value * place.unit;
  });
  return cost;
}

/** Adds `amount` at every column that `chosen` picks. */
export function addAt(
  layout: CostLayout,
  cost: Cost,
  amount: number,
  chosen: (column: Column) => boolean,
): void {
  layout.columns.forEach((column, index) => {
    const place = layout.places[index];
    if (place === undefined || !chosen(column)) return;
    cost[place.limb] = (cost[place.limb] ?? 0) + amount * place.unit;
  });
}

/** The packed cost of one unit at a level without importance; zero when the order does not have it. */
export function unitCost(layout: CostLayout, level: Level): Cost {
  const cost = zeroCost(layout);
  addAt(layout, cost, 1, (column) => column.level === level);
  return cost;
}

/** The sum of two costs, as a new one. */
export function sumOf(a: Cost, b: Cost): Cost {
  return a.map((limb, index) => limb + (b[index] ?? 0));
}

/** `times` as much as a cost, as a new one. */
export function multipleOf(cost: Cost, times: number): Cost {
  return cost.map((limb) => limb * times);
}

/** Below 0 when `a` is smaller, 0 when equal, above 0 when larger. */
export function compareCosts(a: Cost, b: Cost): number {
  for (let limb = 0; limb < a.length; limb += 1) {
    const difference = (a[limb] ?? 0) - (b[limb] ?? 0);
    if (difference !== 0) return difference;
  }
  return 0;
}

/** Turns a packed cost back into figures. */
export function unpackCost(layout: CostLayout, cost: Cost): Objective {
  return layout.columns.map((column, index) => {
    const { limb, unit } = layout.places[index] ?? { limb: 0, unit: 1 };
    const value = Math.floor((cost[limb] ?? 0) / unit) % (column.largest + 1);
    return {
      level: column.level,
      ...(column.importance === undefined ? {} : { importance: column.importance }),
      value,
    };
  });
}
