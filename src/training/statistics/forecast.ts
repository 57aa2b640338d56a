import { type Interval, type NotEstimable, notEstimable } from './estimate';
import { lineAt, type TheilSenLine, type TheilSenReason } from './theil-sen';

/** Whether the goal is a higher or a lower reading. */
export type GoalDirection = 'rising' | 'falling';

/** When a line of readings meets its target, in the unit of `x`. */
export interface Forecast {
  readonly status: 'estimated';
  readonly n: number;
  /** Where the median slope meets the target. */
  readonly at: number;
  /**
   * Where the fast and the slow end of the slope's interval meet it. `earliest` may lie before the last reading: the
   * fast end would have been there already.
   */
  readonly earliest: number;
  readonly latest: number;
  readonly extrapolation: Extrapolation;
}

/** How far a forecast reaches beyond what was observed. */
export interface Extrapolation {
  /** From the first to the last reading. */
  readonly observedSpan: number;
  /** From the last reading to `latest`; below zero when the whole range lies among the readings. */
  readonly ahead: number;
  /** The range reaches further ahead than the readings reach back: to be said wherever the forecast is shown. */
  readonly beyondObservedSpan: boolean;
}

/** The line has met the target within the readings. */
export interface TargetReached {
  readonly status: 'reached';
  readonly n: number;
  /** Where the line meets the target, at or before the last reading. */
  readonly at: number;
}

export type ForecastReason =
  | TheilSenReason
  | 'too-many-ties'
  /** The interval of the slope holds zero: the date has no upper end. */
  | 'slope-may-be-zero'
  /** The whole interval of the slope leads away from the target. */
  | 'moving-away';

/**
 * When the target is met: median(x) + (target - median(y)) / slope, for the slope and both ends of its interval.
 * A straight line is optimistic, as gains in range of motion level off; it is never carried on in silence
 * (`extrapolation`). Without an interval, or with one that holds zero, no date is given.
 */
export function forecastTarget(
  line: TheilSenLine | NotEstimable<TheilSenReason>,
  target: number,
  direction: GoalDirection,
): Forecast | TargetReached | NotEstimable<ForecastReason> {
  if (line.status === 'not-estimable') return line;
  const { n, slope, observed, interval } = line;
  const sign = direction === 'rising' ? 1 : -1;
  const meets = (pace: number): number => line.medianX + (target - line.medianY) / pace;
  if (sign * slope > 0 && sign * (lineAt(line, observed.upper) - target) >= 0) {
    return { status: 'reached', n, at: meets(slope) };
  }
  if (isNotEstimable(interval)) return interval;
  if (sign * interval.lower < 0 && sign * interval.upper < 0) return notEstimable(n, 'moving-away');
  if (interval.lower <= 0 && interval.upper >= 0) return notEstimable(n, 'slope-may-be-zero');
  const [earliest = 0, latest = 0] = [meets(interval.lower), meets(interval.upper)].sort((a, b) => a - b);
  const observedSpan = observed.upper - observed.lower;
  const ahead = latest - observed.upper;
  return {
    status: 'estimated',
    n,
    at: meets(slope),
    earliest,
    latest,
    extrapolation: { observedSpan, ahead, beyondObservedSpan: ahead > observedSpan },
  };
}

function isNotEstimable<R extends string>(value: Interval | NotEstimable<R>): value is NotEstimable<R> {
  return 'status' in value;
}
