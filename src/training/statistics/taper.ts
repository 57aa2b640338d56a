/**
 * The taper after which athletes did best: two weeks in which the volume of training goes down by 41 to 60 %,
 * exponentially, while neither intensity nor frequency changes.
 *
 * Source: Bosquet L, Montpetit J, Arvisais D, Mujika I (2007) Effects of tapering on performance: a meta-analysis. Med
 * Sci Sports Exerc 39(8):1358-1365; 27 studies of competitive swimmers, runners, cyclists and rowers. Borrowed here, not
 * tested for flexibility, hand balancing or aerial work.
 */
export const TAPER_META_ANALYSIS = {
  studies: 27,
  days: 14,
  leastReduction: 41,
  mostReduction: 60,
} as const;

/**
 * The share of the usual volume that is left in each week of a taper, falling exponentially to `100 - reduction` percent
 * in the last one: `(1 - reduction / 100) ** (week / weeks)`. How the fall is given out over the weeks is this project's
 * own reading of "exponentially".
 * @param reduction in percent, above 0 and below 100
 * @returns one share for each week, each above 0 and below 1
 */
export function taperShares(weeks: number, reduction: number): readonly number[] {
  return Array.from({ length: weeks }, (_, index) => (1 - reduction / 100) ** ((index + 1) / weeks));
}
