/**
 * The order of what is wanted, written once.
 *
 * Plans are compared level by level, strictly: a difference at one level outweighs any difference at all
 * later levels together. Every level is a whole number, smaller is better:
 *
 * 1. `leftOut`: how many needed sessions do not stand. Then `leftOutByImportance`: which ones; a column
 *    for each importance, the most important first, so that with equally many left out it is the farther
 *    goal, and of one goal the later need, that waits.
 * 2. `shortfall`: sessions missing from a weekly minimum (recovery) and rest days missing from a week.
 * 3. `row`: pairs of hard days in a row, then `air`: begun steps of time missing from the comfortable
 *    gap between hard sessions. Rows stand first, because only then are there none wherever a week
 *    allows it.
 * 4. `deviation`: distance from the weekdays and times really kept.
 * 5. `preference`: shorter slots, earlier or later hours.
 *
 * `moved` counts the places given up of sessions that stood already. It belongs to planning again: see
 * `keepingAfter`.
 */
export type Level =
  | 'leftOut'
  | 'leftOutByImportance'
  | 'shortfall'
  | 'row'
  | 'air'
  | 'moved'
  | 'deviation'
  | 'preference';

/** The order for a new week or block. */
export const PLANNING: readonly Level[] = [
  'leftOut',
  'leftOutByImportance',
  'shortfall',
  'row',
  'air',
  'deviation',
  'preference',
];

/**
 * The order for planning again what is planned already: keeping places counts right after `level`, or
 * before everything when it is absent.
 */
export function keepingAfter(level?: Exclude<Level, 'moved'>): readonly Level[] {
  const place = level === undefined ? 0 : PLANNING.indexOf(level) + 1;
  return [...PLANNING.slice(0, place), 'moved', ...PLANNING.slice(place)];
}

/** The order for the rest of a week: what is needed and rested stands, with as few moves as that takes. */
export const REARRANGING: readonly Level[] = keepingAfter('shortfall');

/** One figure of an objective. `importance` says which column of `leftOutByImportance` it is. */
export interface ObjectiveFigure {
  readonly level: Level;
  readonly importance?: number;
  readonly value: number;
}

/** All figures of a plan, in the order in which they count. */
export type Objective = readonly ObjectiveFigure[];

/**
 * Compares two objectives of one problem.
 * @returns below 0 when `a` is better, 0 when they are equal, above 0 when `b` is better.
 */
export function compareObjectives(a: Objective, b: Objective): number {
  for (const [place, figure] of a.entries()) {
    const difference = figure.value - (b[place]?.value ?? 0);
    if (difference !== 0) return difference;
  }
  return 0;
}

/** What `a` costs more than `b` (below 0: less), figure by figure. Both belong to the same problem. */
export function differenceOf(a: Objective, b: Objective): Objective {
  return a.map((figure, place) => ({ ...figure, value: figure.value - (b[place]?.value ?? 0) }));
}

/** The value at a level, summed over its columns; 0 when the order does not have the level. */
export function valueAt(objective: Objective, level: Level): number {
  return objective.reduce((sum, figure) => (figure.level === level ? sum + figure.value : sum), 0);
}
