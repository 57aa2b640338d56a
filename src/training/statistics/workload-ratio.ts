import { type NotEstimable, notEstimable } from './estimate';
import { mean } from './moments';
import type { Load } from './session-load';

/** Recent load beside longer load. A description of change, never a risk. */
export interface WorkloadRatio {
  readonly status: 'estimated';
  /** Known days that went into it. */
  readonly n: number;
  readonly form: 'rolling-coupled' | 'rolling-uncoupled' | 'exponential';
  /** Mean daily load of the recent days. */
  readonly acute: number;
  /** Mean daily load of the longer time. */
  readonly chronic: number;
  readonly ratio: number;
}

export type WorkloadReason = 'too-few-days' | 'unknown-loads' | 'no-chronic-load';

export const ACUTE_DAYS = 7;
export const CHRONIC_DAYS = 28;

/**
 * The rolling ratio at the last day: mean of the last 7 days over the mean of the last 28 (`coupled`), or over the
 * mean of the 21 days before those 7 (`uncoupled`, the default: a coupled ratio shares a quarter of its data with
 * itself, which alone makes numerator and denominator correlate at about 0.5, and cannot exceed 4).
 *
 * Criticism to be shown with it: Lolli et al (2019) Br J Sports Med 53:921-922; Impellizzeri et al (2020) Int J Sports
 * Physiol Perform 15:907-913; Impellizzeri et al (2021) Sports Med 51:581-592.
 *
 * @param loads daily loads, the latest last; at least 28, all of the last 28 known
 */
export function rollingWorkloadRatio(
  loads: readonly Load[],
  form: 'coupled' | 'uncoupled' = 'uncoupled',
): WorkloadRatio | NotEstimable<WorkloadReason> {
  const run = knownRun(loads);
  if (run.length < CHRONIC_DAYS) return tooShort(loads, run);
  const window = run.slice(-CHRONIC_DAYS);
  const acute = mean(window.slice(-ACUTE_DAYS)) ?? 0;
  const chronic = mean(form === 'coupled' ? window : window.slice(0, CHRONIC_DAYS - ACUTE_DAYS)) ?? 0;
  return ratioOf(CHRONIC_DAYS, `rolling-${form}`, acute, chronic);
}

/**
 * The ratio of two exponentially weighted averages at the last day (see `exponentialLoad`). Nothing is given for the
 * first 28 days, while the seed still shows. There is no evidence that it is better than the rolling one: Sampson et
 * al (2017) Br J Sports Med 51:621-622.
 *
 * @param loads daily loads, the latest last; the run of known days at the end is used
 */
export function exponentialWorkloadRatio(
  loads: readonly Load[],
): WorkloadRatio | NotEstimable<WorkloadReason> {
  const run = knownRun(loads);
  if (run.length < CHRONIC_DAYS) return tooShort(loads, run);
  const acute = exponentialLoad(run, ACUTE_DAYS).at(-1) ?? 0;
  const chronic = exponentialLoad(run, CHRONIC_DAYS).at(-1) ?? 0;
  return ratioOf(run.length, 'exponential', acute, chronic);
}

/**
 * Exponentially weighted daily loads: average = lambda load + (1 - lambda) average, lambda = 2/(days + 1). The seed
 * is the first day's load, the usual choice; the source states none.
 *
 * Source: Williams, West, Cross & Stokes (2017) Br J Sports Med 51:209-210.
 */
export function exponentialLoad(loads: readonly number[], days: number): readonly number[] {
  const lambda = 2 / (days + 1);
  const averages: number[] = [];
  for (const load of loads) averages.push(lambda * load + (1 - lambda) * (averages.at(-1) ?? load));
  return averages;
}

/** The known loads after the last unknown day. */
function knownRun(loads: readonly Load[]): number[] {
  const lastUnknown = loads.lastIndexOf(undefined);
  return loads.slice(lastUnknown + 1).filter((load) => load !== undefined);
}

function tooShort(loads: readonly Load[], run: readonly number[]): NotEstimable<WorkloadReason> {
  const reason = loads.length < CHRONIC_DAYS ? 'too-few-days' : 'unknown-loads';
  return notEstimable(run.length, reason, [
    { what: 'known-days-in-a-row', have: run.length, need: CHRONIC_DAYS },
  ]);
}

function ratioOf(
  n: number,
  form: WorkloadRatio['form'],
  acute: number,
  chronic: number,
): WorkloadRatio | NotEstimable<WorkloadReason> {
  if (chronic === 0) return notEstimable(n, 'no-chronic-load');
  return { status: 'estimated', n, form, acute, chronic, ratio: acute / chronic };
}
