import { type DayNumber, dayNumber, type IsoDate } from '../../notation/time/iso-date';
import type { DayReading } from '../metric-progress';
import { type NotEstimable, notEstimable, shortfalls } from '../statistics/estimate';
import { FEWEST_POINTS_FOR_TREND } from '../statistics/mann-kendall';
import { withinMeasuringNoise } from '../statistics/measuring-error';
import { lineAt, theilSen } from '../statistics/theil-sen';
import type { MeasuringNoise } from './measuring-noise';

/** Whether a series has stood still of late although there was training for it. */
export interface PlateauCheck {
  readonly status: 'estimated';
  /** Days measured in the window. */
  readonly n: number;
  readonly isPlateau: boolean;
  readonly weeks: number;
  readonly first: IsoDate;
  readonly last: IsoDate;
  /** From the first to the last of these days, along their line. */
  readonly change: number;
  /** Changes below this are noise. */
  readonly detectableChange: number;
  /** Sessions done for the goal in the window. */
  readonly sessionsDone: number;
}

export type PlateauReason = 'too-few-days' | 'days-too-close' | 'too-few-sessions';

/** No source: the weeks looked back on, and what must lie in them. */
export const PLATEAU_WEEKS = 6;
const leastSpan = 28;
/** One session a week: with fewer, nothing was to be expected. */
const fewestSessionsAWeek = 1;

/**
 * Whether the last weeks hold no change beyond measuring noise although sessions that count for the goal were done:
 * the change along the line through them is below the detectable change, and the interval of its slope holds zero.
 * Needs readings of five days, as fewer have no interval, that lie four weeks apart, and one session a week. No source
 * for the last two numbers.
 *
 * @param sessionDays the days of the sessions done for the goal, one entry a session
 */
export function plateauCheck(
  days: readonly DayReading[],
  sessionDays: readonly DayNumber[],
  noise: MeasuringNoise,
  today: IsoDate,
  weeks = PLATEAU_WEEKS,
): PlateauCheck | NotEstimable<PlateauReason> {
  const end = dayNumber(today);
  const inWindow = (day: DayNumber): boolean => day > end - 7 * weeks && day <= end;
  const recent = days.filter(({ day }) => inWindow(day));
  const sessionsDone = sessionDays.filter(inWindow).length;
  const n = recent.length;
  const [first, last] = [recent[0], recent.at(-1)];
  const span = first && last ? last.day - first.day : 0;
  const counts = [
    { what: 'days', have: n, need: FEWEST_POINTS_FOR_TREND },
    { what: 'days-between-first-and-last', have: span, need: leastSpan },
    { what: 'sessions', have: sessionsDone, need: weeks * fewestSessionsAWeek },
  ];
  const line = theilSen(recent.map(({ day, value }) => ({ x: day, y: value })));
  if (n < FEWEST_POINTS_FOR_TREND || !first || !last || line.status === 'not-estimable') {
    return notEstimable(n, 'too-few-days', counts);
  }
  if (shortfalls(counts).length > 0) {
    return notEstimable(n, span < leastSpan ? 'days-too-close' : 'too-few-sessions', counts);
  }
  const change = lineAt(line, last.day) - lineAt(line, first.day);
  const { interval } = line;
  const mayBeLevel = 'status' in interval || (interval.lower <= 0 && interval.upper >= 0);
  return {
    status: 'estimated',
    n,
    isPlateau: mayBeLevel && withinMeasuringNoise(change, noise.detectableChange),
    weeks,
    first: first.date,
    last: last.date,
    change,
    detectableChange: noise.detectableChange,
    sessionsDone,
  };
}
