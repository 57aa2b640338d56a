import { dayNumber } from '../../notation/time/iso-date';
import type { BandDay, TrendView } from '../../pages/goal-page-data';
import type { MetricProgress } from '../../training/metric-progress';
import type { SeriesFigures } from '../../training/progress/metric-figures';
import type { Interval } from '../../training/statistics/estimate';
import { lineAt, type TheilSenLine } from '../../training/statistics/theil-sen';

/** Days at which the edges of a band are given: it has a corner where the line runs through the medians. */
function rangeAt(line: TheilSenLine, slopes: Interval, day: number): BandDay {
  const one = line.medianY + slopes.lower * (day - line.medianX);
  const other = line.medianY + slopes.upper * (day - line.medianX);
  return { day, lower: Math.min(one, other), upper: Math.max(one, other) };
}

/** The day on which a line with this slope, drawn through the medians, meets `target`. */
function meets(line: TheilSenLine, slope: number, target: number): number {
  return line.medianX + (target - line.medianY) / slope;
}

/** The fan stops at the target: nothing is said about what comes beyond it. */
function upToTarget(range: BandDay, target: number, lowerIsBetter: boolean): BandDay {
  return lowerIsBetter
    ? { ...range, lower: Math.max(range.lower, target), upper: Math.max(range.upper, target) }
    : { ...range, lower: Math.min(range.lower, target), upper: Math.min(range.upper, target) };
}

/**
 * Where the line leads from the latest reading on, while a date is forecast at all: as far as the slow end takes to
 * the target, and no further than the readings reach back.
 */
function fan(
  { forecast }: SeriesFigures,
  line: TheilSenLine,
  slopes: Interval,
  { target, lowerIsBetter }: MetricProgress,
): readonly BandDay[] | undefined {
  if (forecast.status !== 'estimated' || target === undefined || lowerIsBetter === undefined)
    return undefined;
  const { lower: first, upper: last } = line.observed;
  const end = Math.min(dayNumber(forecast.latest), last + (last - first));
  // The edges bend where either of them meets the target.
  const bends = [slopes.lower, slopes.upper]
    .map((slope) => meets(line, slope, target))
    .filter((day) => day > last && day < end);
  return [last, ...bends.sort((one, other) => one - other), end].map((day) =>
    upToTarget(rangeAt(line, slopes, day), target, lowerIsBetter),
  );
}

/** The line of a series with what is known about it, or `undefined` while there is none. */
export function trendView(series: SeriesFigures, metric: MetricProgress): TrendView | undefined {
  const { trend } = series;
  if (trend.status !== 'estimated') return undefined;
  const { line } = trend;
  const { lower: first, upper: last } = line.observed;
  const ends = [
    { day: first, value: lineAt(line, first) },
    { day: last, value: lineAt(line, last) },
  ] as const;
  const { interval } = line;
  if ('status' in interval) return { line: ends };
  const ahead = fan(series, line, interval, metric);
  return {
    line: ends,
    band: [first, line.medianX, last].map((day) => rangeAt(line, interval, day)),
    ...(ahead ? { fan: ahead } : {}),
  };
}
