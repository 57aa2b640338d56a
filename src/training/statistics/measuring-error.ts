import { chiSquareQuantile } from './chi-square-quantile';
import { type Interval, type NotEstimable, notEstimable, type Shortfall, shortfalls } from './estimate';
import { mean, squaredDeviations, sum } from './moments';
import { twoSidedZ } from './normal-quantile';
import { studentTQuantile } from './student-t-quantile';

/** The typical error of one reading, in the unit of the readings. */
export interface TypicalError {
  readonly status: 'estimated';
  /** How many readings it stands on. */
  readonly n: number;
  readonly typicalError: number;
  readonly degreesOfFreedom: number;
  readonly interval: Interval;
  /** What would make it trustworthy; empty when there is enough. */
  readonly shortOfRecommended: readonly Shortfall[];
}

/** Typical error from the same subjects read in every one of several trials. */
export interface TrialsError extends TypicalError {
  readonly subjects: number;
  readonly trials: number;
  /** Change of the mean from the first to the last trial: learning or warming up, not noise. */
  readonly meanChange: number;
  readonly meanChangeInterval: Interval;
  /** Mean squares of the two-way analysis of variance. */
  readonly meanSquares: { readonly subjects: number; readonly trials: number; readonly error: number };
}

/** Range in which most differences between two readings of an unchanged quantity fall. */
export interface LimitsOfAgreement extends Interval {
  readonly n: number;
  readonly meanDifference: number;
  readonly standardDeviation: number;
}

/** Three repeats on three days: fewer say too little, and a single day hides day-to-day noise. */
export const RECOMMENDED_DAYS = 3;
export const RECOMMENDED_DEGREES_OF_FREEDOM = 6;

/**
 * Typical error pooled over days with repeated readings: sqrt(sum of squares within days / sum of (repeats - 1)).
 * Days with a single reading say nothing about it and are left out.
 *
 * Source: Hopkins WG (2000) Sports Med 30:1-15. Interval: typical error x sqrt(df / chi-square).
 *
 * @param days the readings of each day
 */
export function typicalErrorFromRepeats(
  days: readonly (readonly number[])[],
  confidence = 0.95,
): TypicalError | NotEstimable<'no-repeats'> {
  const repeated = days.filter((readings) => readings.length > 1);
  const n = sum(repeated.map((readings) => readings.length));
  const degreesOfFreedom = n - repeated.length;
  const recommended: readonly Shortfall[] = [
    { what: 'days-with-repeats', have: repeated.length, need: RECOMMENDED_DAYS },
    { what: 'repeats', have: degreesOfFreedom, need: RECOMMENDED_DEGREES_OF_FREEDOM },
  ];
  if (degreesOfFreedom < 1) return notEstimable(n, 'no-repeats', recommended);
  const typicalError = Math.sqrt(sum(repeated.map(squaredDeviations)) / degreesOfFreedom);
  return {
    status: 'estimated',
    n,
    typicalError,
    degreesOfFreedom,
    interval: scaled(typicalError, standardDeviationFactors(degreesOfFreedom, confidence)),
    shortOfRecommended: shortfalls(recommended),
  };
}

/**
 * Typical error from test-retest pairs, or from any number of trials of the same subjects: sqrt(mean square error of
 * the two-way analysis of variance), which for two trials is SD(differences)/sqrt(2). A shift that is common to all
 * (learning, warming up) is not counted as noise.
 *
 * Sources: Hopkins (2000); Weir JP (2005) J Strength Cond Res 19:231-240.
 *
 * @param rows one row a subject (or a day), one reading a trial; every row is equally long
 */
export function typicalErrorFromTrials(
  rows: readonly (readonly number[])[],
  confidence = 0.95,
): TrialsError | NotEstimable<'too-few-subjects' | 'too-few-trials'> {
  const subjects = rows.length;
  const trials = rows[0]?.length ?? 0;
  if (rows.some((row) => row.length !== trials))
    throw new RangeError('Every subject needs a reading in every trial');
  const n = subjects * trials;
  const counts: readonly Shortfall[] = [
    { what: 'subjects', have: subjects, need: 2 },
    { what: 'trials', have: trials, need: 2 },
  ];
  if (subjects < 2) return notEstimable(n, 'too-few-subjects', counts);
  if (trials < 2) return notEstimable(n, 'too-few-trials', counts);
  const subjectMeans = rows.map((row) => mean(row) ?? 0);
  const trialMeans = Array.from(
    { length: trials },
    (_, trial) => mean(rows.map((row) => row[trial] ?? 0)) ?? 0,
  );
  const grandMean = mean(subjectMeans) ?? 0;
  // Summed from the residuals, not by subtracting sums of squares, so that large readings keep their digits.
  const ssError = sum(
    rows.flatMap((row, i) =>
      row.map((reading, j) => (reading - (subjectMeans[i] ?? 0) - (trialMeans[j] ?? 0) + grandMean) ** 2),
    ),
  );
  const degreesOfFreedom = (subjects - 1) * (trials - 1);
  const typicalError = Math.sqrt(ssError / degreesOfFreedom);
  const meanChange = (trialMeans.at(-1) ?? 0) - (trialMeans[0] ?? 0);
  const reach =
    studentTQuantile((1 + confidence) / 2, degreesOfFreedom) * typicalError * Math.sqrt(2 / subjects);
  return {
    status: 'estimated',
    n,
    subjects,
    trials,
    typicalError,
    degreesOfFreedom,
    interval: scaled(typicalError, standardDeviationFactors(degreesOfFreedom, confidence)),
    meanChange,
    meanChangeInterval: { lower: meanChange - reach, upper: meanChange + reach },
    meanSquares: {
      subjects: (trials * squaredDeviations(subjectMeans)) / (subjects - 1),
      trials: (subjects * squaredDeviations(trialMeans)) / (trials - 1),
      error: ssError / degreesOfFreedom,
    },
    shortOfRecommended: shortfalls([
      { what: 'repeats', have: degreesOfFreedom, need: RECOMMENDED_DEGREES_OF_FREEDOM },
    ]),
  };
}

/**
 * Bland and Altman's limits of agreement: mean difference +- 1.96 SD of the differences (second minus first).
 * `undefined` with fewer than two pairs. Source: Atkinson & Nevill (1998) Sports Med 26:217-238.
 */
export function limitsOfAgreement(
  pairs: readonly (readonly [first: number, second: number])[],
): LimitsOfAgreement | undefined {
  if (pairs.length < 2) return undefined;
  const differences = pairs.map(([first, second]) => second - first);
  const meanDifference = mean(differences) ?? 0;
  const standardDeviation = Math.sqrt(squaredDeviations(differences) / (pairs.length - 1));
  const reach = 1.96 * standardDeviation;
  return {
    n: pairs.length,
    meanDifference,
    standardDeviation,
    lower: meanDifference - reach,
    upper: meanDifference + reach,
  };
}

/**
 * The factors by which a standard deviation is multiplied for its interval: sqrt(df / chi-square quantile).
 */
export function standardDeviationFactors(degreesOfFreedom: number, confidence = 0.95): Interval {
  return {
    lower: Math.sqrt(degreesOfFreedom / chiSquareQuantile((1 + confidence) / 2, degreesOfFreedom)),
    upper: Math.sqrt(degreesOfFreedom / chiSquareQuantile((1 - confidence) / 2, degreesOfFreedom)),
  };
}

/**
 * The smallest difference between two readings that is not explained by measuring error at the given confidence:
 * z sqrt(2) x typical error, divided by sqrt(k) when each is the mean of k readings. 2.7719 x at 95 %.
 * Source: Weir (2005); de Vet's MDD = 1.96 SD(differences) is the same.
 */
export function minimalDetectableChange(typicalError: number, confidence = 0.95, readingsInEach = 1): number {
  return twoSidedZ(confidence) * Math.SQRT2 * (typicalError / Math.sqrt(readingsInEach));
}

/** Whether a change is inside what measuring error alone would show. */
export function withinMeasuringNoise(change: number, detectableChange: number): boolean {
  return Math.abs(change) < detectableChange;
}

function scaled(value: number, factors: Interval): Interval {
  return { lower: value * factors.lower, upper: value * factors.upper };
}
