import type { Interval } from './estimate';

/** An exponentially weighted moving average with its control limits. */
export interface EwmaChart {
  readonly n: number;
  readonly averages: readonly number[];
  /** The exact limits after each value; they widen towards the asymptotic ones. */
  readonly limits: readonly Interval[];
  readonly asymptoticLimits: Interval;
  /** Positions (from 0) whose average lies outside its own limits. */
  readonly alarms: readonly number[];
}

/** What a chart is held against. */
export interface EwmaDesign {
  /** The level that is held normal; the average starts there. */
  readonly start: number;
  /** Standard deviation of single values. */
  readonly standardDeviation: number;
  /** Weight of the newest value, 0..1. */
  readonly weight: number;
  /** Width of the limits in standard deviations of the average, usually 3. */
  readonly width: number;
}

/**
 * z = weight x + (1 - weight) z with limits start -+ width s sqrt(weight/(2 - weight) [1 - (1 - weight)^(2t)]).
 * Source: Roberts (1959) Technometrics 1:239-250; NIST/SEMATECH e-Handbook 6.3.2.4.
 */
export function ewmaChart(
  values: readonly number[],
  { start, standardDeviation, weight, width }: EwmaDesign,
): EwmaChart {
  const reach = (age: number): number =>
    width * standardDeviation * Math.sqrt((weight / (2 - weight)) * (1 - (1 - weight) ** (2 * age)));
  const averages: number[] = [];
  for (const value of values) averages.push(weight * value + (1 - weight) * (averages.at(-1) ?? start));
  const limits = values.map((_, i) => around(start, reach(i + 1)));
  const alarms = averages.flatMap((average, i) => {
    const limit = limits[i];
    return limit && (average < limit.lower || average > limit.upper) ? [i] : [];
  });
  return {
    n: values.length,
    averages,
    limits,
    asymptoticLimits: around(start, reach(Number.POSITIVE_INFINITY)),
    alarms,
  };
}

function around(centre: number, reach: number): Interval {
  return { lower: centre - reach, upper: centre + reach };
}
