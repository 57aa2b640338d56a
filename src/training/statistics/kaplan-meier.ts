import { type NotEstimable, notEstimable } from './estimate';

/** How long something lasted; `ended` is false when it was still going at that time (censored). */
export interface Duration {
  readonly time: number;
  readonly ended: boolean;
}

/** One step down of the survival curve. */
export interface SurvivalStep {
  readonly time: number;
  /** Still going just before this time. */
  readonly atRisk: number;
  readonly ended: number;
  /** Share expected to go on beyond this time. */
  readonly survival: number;
  /** Greenwood's standard error of `survival`. */
  readonly standardError: number;
}

/** The product-limit estimate. */
export interface SurvivalCurve {
  readonly status: 'estimated';
  readonly n: number;
  readonly ended: number;
  readonly steps: readonly SurvivalStep[];
}

/**
 * Kaplan and Meier's product-limit estimate of how long something lasts, with unfinished runs counted for as long as
 * they were seen. At equal times an end comes before a censoring.
 *
 * Sources: Kaplan & Meier (1958) JASA 53:457-481; standard error S sqrt(sum d / (r (r - d))) after Greenwood (1926).
 */
export function kaplanMeier(durations: readonly Duration[]): SurvivalCurve | NotEstimable<'too-few-runs'> {
  const n = durations.length;
  if (n === 0) return notEstimable(n, 'too-few-runs', [{ what: 'runs', have: 0, need: 1 }]);
  const endings = durations.filter(({ ended }) => ended);
  const times = [...new Set(endings.map(({ time }) => time))].sort((a, b) => a - b);
  let survival = 1;
  let greenwood = 0;
  const steps = times.map((time) => {
    const atRisk = durations.filter((duration) => duration.time >= time).length;
    const ended = endings.filter((ending) => ending.time === time).length;
    survival *= 1 - ended / atRisk;
    greenwood += ended / (atRisk * (atRisk - ended));
    // When the last run ends, the estimate is 0 and Greenwood's formula has nothing more to say.
    return {
      time,
      atRisk,
      ended,
      survival,
      standardError: survival === 0 ? 0 : survival * Math.sqrt(greenwood),
    };
  });
  return { status: 'estimated', n, ended: endings.length, steps };
}
