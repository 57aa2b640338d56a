import type { Journal } from '../../journal/journal';
import { dayNumber, type IsoDate } from '../../notation/time/iso-date';
import type { Message } from '../finding';
import type { NotEstimable } from '../statistics/estimate';
import {
  CHRONIC_DAYS,
  exponentialWorkloadRatio,
  rollingWorkloadRatio,
  type WorkloadRatio,
  type WorkloadReason,
} from '../statistics/workload-ratio';
import { standingBetween, type WeekReader, weekReader } from '../training-week';
import { message } from '../wording';
import { dayLoads } from './day-loads';
import { sessionLoads } from './session-loads';

/** Recent load beside longer load, in two ways, with what is said against both. A description, never a risk. */
export interface WorkloadRatios {
  /** The last day that counts: yesterday, as today is not over. */
  readonly upTo: IsoDate;
  /** Last 7 days over the 21 days before them. */
  readonly rolling: WorkloadRatio | NotEstimable<WorkloadReason>;
  /** Averages in which newer days weigh more. */
  readonly exponential: WorkloadRatio | NotEstimable<WorkloadReason>;
  /** To be offered wherever a ratio is shown. */
  readonly criticism: readonly Message[];
}

/** What is published against ratios of acute to chronic load. */
export const workloadCriticism: readonly Message[] = [
  message(
    'A ratio whose two halves share days correlates with itself: 0.5 from unrelated numbers (Lolli and others, 2019, British Journal of Sports Medicine 53:921-922)',
  ),
  message(
    'Dividing by one fixed number in place of the long-term load went along with injuries nearly as much: odds ratio 1.95 against 2.45 (Impellizzeri and others, 2021, Sports Medicine 51:581-592)',
  ),
  message(
    'There is no evidence that weighting newer days more makes it better (Sampson and others, 2017, British Journal of Sports Medicine 51:621-622)',
  ),
  message('So it describes a change of load, and says nothing about the chance of getting hurt'),
];

/** Days that the averages are given to settle in. */
const daysLookedAt = 4 * CHRONIC_DAYS;

/** The ratios on the day before `today`. Days before the first note of the journal are not rest days. */
export function workloadRatios(
  journal: Journal,
  today: IsoDate,
  weeks: WeekReader = weekReader(journal, today),
): WorkloadRatios | undefined {
  const span = journal.span();
  const last = dayNumber(today) - 1;
  if (!span || span.first > last) return undefined;
  const first = Math.max(span.first, last - daysLookedAt + 1);
  const days = dayLoads(sessionLoads(standingBetween(weeks, first, last)), first, last);
  const loads = days.map(({ load }) => load.total);
  return {
    upTo: days.at(-1)?.date ?? today,
    rolling: rollingWorkloadRatio(loads),
    exponential: exponentialWorkloadRatio(loads),
    criticism: workloadCriticism,
  };
}
