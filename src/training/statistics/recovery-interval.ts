import { type Interval, type NotEstimable, notEstimable, shortfalls } from './estimate';
import { type LogisticFit, type LogisticReason, logit, predictorAtChance } from './logistic-model';
import {
  type CauchyPrior,
  DEFAULT_SLOPE_PRIOR,
  defaultInputScale,
  posteriorModeLogistic,
} from './logistic-posterior-mode';
import { sampleStandardDeviation } from './moments';
import { median } from './order-statistics';

/** Two consecutive sessions of one kind or region. */
export interface RecoveryPair {
  /** From the end of the first to the start of the second, elapsed hours. */
  readonly hours: number;
  /** Whether the notes say that it was still sore, or that the second was skipped for being sore. */
  readonly sore: boolean;
  /** Load of the first session, when it is known. */
  readonly load?: number;
}

/** What is asked, and what is believed before the notes speak. */
export interface RecoveryQuestion {
  /** The gap that is common practice: the prior is centred on it. */
  readonly defaultGapHours: number;
  /** The chance of "still sore" that the athlete accepts, inside 0..1. */
  readonly acceptedChance: number;
  readonly confidence?: number;
}

/** The gap at which "still sore" falls to the accepted chance, in these notes. */
export interface RecoveryInterval {
  readonly status: 'estimated';
  /** Pairs of sessions. */
  readonly n: number;
  readonly sore: number;
  readonly ready: number;
  readonly acceptedChance: number;
  readonly defaultGapHours: number;
  /** The gap, never below 0. */
  readonly hours: number;
  readonly interval: Interval;
  /** Shortest and longest gap seen. */
  readonly observed: Interval;
  /** Whether `hours` lies outside the gaps seen: then it is an extrapolation, and to be called one. */
  readonly beyondObserved: 'shorter' | 'longer' | 'no';
  /** The load of the first session at which `hours` stands, when the model holds the load. */
  readonly typicalLoad: number | undefined;
  /** Predictors: hours, then the load when `typicalLoad` is given. For the curve, use `chanceAt`. */
  readonly fit: LogisticFit;
}

export type RecoveryReason =
  | LogisticReason
  /** Not enough notes yet: `missing` says of what. */
  | 'too-few-pairs'
  /** All gaps are nearly the same, so nothing can be learned about other gaps. */
  | 'hours-vary-little'
  /** In these notes soreness does not fall with a longer gap. */
  | 'soreness-does-not-fall';

export const FEWEST_PAIRS = 12;
export const FEWEST_OF_EITHER = 4;
/** With the load as second predictor, twice as many of the rarer outcome. No source: one rule of thumb among many. */
export const FEWEST_OF_EITHER_WITH_LOAD = 8;
/** Sample standard deviation of the gaps below which they are called alike. No source. */
export const LEAST_SPREAD_HOURS = 6;
/**
 * Width of the belief that the default gap leaves just the accepted chance: a Cauchy scale of 2.5 log odds is weak, a
 * dozen pairs outweigh it. No source; narrower than Gelman's 10 because something is known.
 */
export const GAP_PRIOR_SCALE = 2.5;

/**
 * The recovery interval of one kind or region: logit P(still sore) = a + b hours, by the mode of the posterior, solved
 * for the accepted chance. Hours are counted from the default gap and scaled by two standard deviations. The prior
 * says weakly that at the default gap the chance is the accepted one (Cauchy, scale 2.5 log odds), and nothing about
 * the direction of the slope (Gelman's Cauchy(0, 2.5)): that soreness falls with time has to come from the notes.
 * When every pair has a load, loads differ, and there are enough of both outcomes, the load joins in, and the gap is
 * given at the median load.
 *
 * An association in the notes, not a cause: people come back when they feel ready, so long gaps follow hard days;
 * soreness is not tissue readiness; and old notes age, as repeated bouts protect.
 *
 * Method: Gelman et al (2008) Ann Appl Stat 2:1360-1383; interval by the delta method.
 */
export function recoveryInterval(
  pairs: readonly RecoveryPair[],
  { defaultGapHours, acceptedChance, confidence = 0.95 }: RecoveryQuestion,
): RecoveryInterval | NotEstimable<RecoveryReason> {
  if (!(acceptedChance > 0 && acceptedChance < 1))
    throw new RangeError(`${acceptedChance} is no chance inside 0..1`);
  const n = pairs.length;
  const sore = pairs.filter((pair) => pair.sore).length;
  const ready = n - sore;
  const counts = [
    { what: 'pairs', have: n, need: FEWEST_PAIRS },
    { what: 'still-sore', have: sore, need: FEWEST_OF_EITHER },
    { what: 'ready', have: ready, need: FEWEST_OF_EITHER },
  ];
  if (shortfalls(counts).length > 0) return notEstimable(n, 'too-few-pairs', counts);
  const hours = pairs.map((pair) => pair.hours);
  const spread = sampleStandardDeviation(hours) ?? 0;
  if (spread < LEAST_SPREAD_HOURS) return notEstimable(n, 'hours-vary-little');

  const loads = usableLoads(pairs, Math.min(sore, ready));
  const typicalLoad = loads && median(loads);
  const gapPrior: CauchyPrior = { location: logit(acceptedChance), scale: GAP_PRIOR_SCALE };
  const fit = posteriorModeLogistic(
    pairs.map((pair, i) => ({
      predictors: loads ? [pair.hours, loads[i] ?? 0] : [pair.hours],
      outcome: pair.sore,
    })),
    {
      intercept: gapPrior,
      slopes: loads ? [DEFAULT_SLOPE_PRIOR, DEFAULT_SLOPE_PRIOR] : [DEFAULT_SLOPE_PRIOR],
      inputs: [
        { centre: defaultGapHours, unit: 2 * spread },
        ...(loads ? [{ ...defaultInputScale(loads), centre: typicalLoad ?? 0 }] : []),
      ],
    },
  );
  if (fit.status === 'not-estimable') return fit;
  const found = predictorAtChance(fit, acceptedChance, { predictors: [0, typicalLoad ?? 0] }, confidence);
  if (found.status === 'not-estimable' || (fit.coefficients[1] ?? 0) >= 0) {
    return notEstimable(n, 'soreness-does-not-fall');
  }
  const observed = { lower: Math.min(...hours), upper: Math.max(...hours) };
  return {
    status: 'estimated',
    n,
    sore,
    ready,
    acceptedChance,
    defaultGapHours,
    hours: Math.max(0, found.value),
    interval: { lower: Math.max(0, found.interval.lower), upper: Math.max(0, found.interval.upper) },
    observed,
    beyondObserved: found.value < observed.lower ? 'shorter' : found.value > observed.upper ? 'longer' : 'no',
    typicalLoad,
    fit,
  };
}

/** The loads, when they can serve as a second predictor. */
function usableLoads(pairs: readonly RecoveryPair[], rarer: number): readonly number[] | undefined {
  const loads = pairs.map(({ load }) => load).filter((load) => load !== undefined);
  const complete = loads.length === pairs.length;
  return complete && rarer >= FEWEST_OF_EITHER_WITH_LOAD && new Set(loads).size > 1 ? loads : undefined;
}
