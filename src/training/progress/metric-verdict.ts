import type { IsoDate } from '../../notation/time/iso-date';
import type { Message } from '../finding';
import type { NotEstimable } from '../statistics/estimate';
import { FEWEST_POINTS_FOR_TREND } from '../statistics/mann-kendall';
import { message } from '../wording';
import type { MetricForecast, MetricForecastReason, TargetMet } from './metric-forecast';

/** How a series stands to its target and date, in one word; from good to bad as `verdictOrder` has it. */
export type VerdictCode =
  | 'reached'
  /** The whole range of dates lies before the date, or on it. */
  | 'in-time'
  /** The date lies within the range. */
  | 'may-be-late'
  /** The whole range lies after the date. */
  | 'late'
  /** A range of dates, and no date to hold it against. */
  | 'no-date'
  | 'not-estimable'
  | 'no-target';

/** The one sentence about a series. Dates in it are ISO dates. */
export interface MetricVerdict {
  readonly code: VerdictCode;
  readonly message: Message;
  /** The range as the sentence says it; `earliest` is never before today. */
  readonly earliest?: IsoDate;
  readonly latest?: IsoDate;
  readonly by?: IsoDate;
}

/** Verdicts from the one that asks for most attention to the one that asks for none. */
export const verdictOrder: readonly VerdictCode[] = [
  'late',
  'may-be-late',
  'not-estimable',
  'no-date',
  'in-time',
  'reached',
  'no-target',
];

/** What a verdict is worked out from. */
export interface VerdictQuestion {
  readonly forecast: MetricForecast | TargetMet | NotEstimable<MetricForecastReason | 'no-target'>;
  /** The first day whose mean was at the target. */
  readonly reachedOn?: IsoDate | undefined;
  readonly by?: IsoDate | undefined;
  readonly today: IsoDate;
}

/** Why no date can be given, in words. */
export function refusalWords({
  reason,
  missing,
  n,
}: NotEstimable<MetricForecastReason | 'no-target'>): Message {
  const [short] = missing;
  switch (reason) {
    case 'no-target':
      return message('No target is set, so there is nothing to forecast');
    case 'slope-may-be-zero':
      return message('No date can be given: the readings of {0} days may as well stand still', n);
    case 'moving-away':
      return message('No date can be given: the readings of {0} days move away from the target', n);
    case 'too-many-ties':
      return message('No date can be given: too many of the readings of {0} days are alike', n);
    case 'too-far-ahead':
      return message('No date can be given: at this pace it is more than ten years away');
    default:
      return message(
        'Not enough notes yet for a date: {0} of {1} days measured',
        short?.have ?? n,
        // The line needs two days, and only its interval gives a date.
        Math.max(short?.need ?? 0, FEWEST_POINTS_FOR_TREND),
      );
  }
}

function rangeWords(
  { earliest, latest, beyondObservedSpan }: MetricForecast,
  by: IsoDate | undefined,
  today: IsoDate,
): MetricVerdict {
  const from = earliest < today ? today : earliest;
  const to = latest < from ? from : latest;
  const code: VerdictCode =
    by === undefined ? 'no-date' : to <= by ? 'in-time' : from > by ? 'late' : 'may-be-late';
  const range =
    from === to
      ? 'At this pace the target is reached about {0}'
      : 'At this pace the target is reached between {0} and {1}';
  const date = {
    'no-date': '; no date is set',
    'in-time': '; the date is {2}',
    'may-be-late': '; the date, {2}, lies between the two',
    late: '; the date, {2}, is earlier',
  }[code];
  const further = beyondObservedSpan ? '. That is further ahead than the readings reach back' : '';
  return {
    code,
    message: message(range + date + further, from, to, by ?? ''),
    earliest: from,
    latest: to,
    ...(by === undefined ? {} : { by }),
  };
}

/** The verdict on one series: both dates in one sentence, or what is missing for one. */
export function metricVerdict({ forecast, reachedOn, by, today }: VerdictQuestion): MetricVerdict {
  const date = by === undefined ? {} : { by };
  if (forecast.status === 'not-estimable' && forecast.reason === 'no-target') {
    return { code: 'no-target', message: refusalWords(forecast), ...date };
  }
  if (reachedOn !== undefined) {
    return { code: 'reached', message: message('The target was reached on {0}', reachedOn), ...date };
  }
  if (forecast.status === 'reached') {
    return {
      code: 'reached',
      message: message('By the line through the readings the target was reached about {0}', forecast.at),
      ...date,
    };
  }
  if (forecast.status === 'not-estimable') {
    return { code: 'not-estimable', message: refusalWords(forecast), ...date };
  }
  return rangeWords(forecast, by, today);
}
