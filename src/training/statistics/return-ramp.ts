/** One week of a return after a break. */
export interface RampWeek {
  /** 1 for the first week back. */
  readonly week: number;
  /** Taken off the usual maximum, in percent. */
  readonly cutPercent: number;
  /** The upper limit for the week, in the unit of the usual maximum. */
  readonly limit: number;
}

/** A return, week by week, the last one being the full load again. */
export interface ReturnRamp {
  /** Weeks, the full one included. */
  readonly n: number;
  readonly weeks: readonly RampWeek[];
}

/** The cuts of the four weeks, in percent. */
export const RETURN_CUTS = [50, 30, 20, 10] as const;

/** A break of this many days calls for a return. */
export const BREAK_DAYS = 14;

/**
 * The 50/30/20/10 rule for coming back after a break of two weeks or more: upper limits of weekly volume, cut by 50 %,
 * 30 %, 20 % and 10 % from the usual maximum, then all of it if there was no problem.
 *
 * Source: Caterisano A et al (2019) Strength Cond J 41(3):1-23. Written for college football; borrowed here, not tested
 * for flexibility or skill work.
 *
 * @param usualMaximum the usual highest week, in any unit (minutes, sessions, load)
 * @param cuts `RETURN_CUTS`, or its first two for somebody who returns to a known routine after a short break
 */
export function returnRamp(usualMaximum: number, cuts: readonly number[] = RETURN_CUTS): ReturnRamp {
  const weeks = [...cuts, 0].map((cutPercent, i) => ({
    week: i + 1,
    cutPercent,
    limit: (usualMaximum * (100 - cutPercent)) / 100,
  }));
  return { n: weeks.length, weeks };
}
