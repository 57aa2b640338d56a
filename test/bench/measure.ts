import { digits } from './table';

/** How long something takes, in milliseconds a run: the middle of the runs, and the middle half of them. */
export interface Measurement {
  readonly runs: number;
  readonly median: number;
  /** First quartile: a quarter of the runs are as fast as this. */
  readonly low: number;
  /** Third quartile. */
  readonly high: number;
}

/** Two ways of doing the same, measured turn by turn; `ratio` is the second's time over the first's, run by run. */
export interface Comparison {
  readonly first: Measurement;
  readonly second: Measurement;
  readonly ratio: Measurement;
}

/** How often to run. */
export interface Effort {
  /** Runs that are thrown away, in which code is compiled and caches fill; 5 when absent. */
  readonly warmUp?: number;
  /** Runs that count; 30 when absent. */
  readonly runs?: number;
}

/** What is measured. */
export type Work = () => unknown | Promise<unknown>;

async function timeOnce(work: Work): Promise<number> {
  const start = performance.now();
  await work();
  return performance.now() - start;
}

/** Quantile `share` (0 to 1) of numbers in rising order, linear between neighbours (Hyndman and Fan 1996, type 7). */
export function quantile(sorted: readonly number[], share: number): number {
  const position = (sorted.length - 1) * share;
  const below = sorted[Math.floor(position)] ?? Number.NaN;
  const above = sorted[Math.ceil(position)] ?? Number.NaN;
  return below + (above - below) * (position - Math.floor(position));
}

/** Median and quartiles of numbers in any order. */
export function summarize(values: readonly number[]): Measurement {
  const sorted = [...values].sort((left, right) => left - right);
  return {
    runs: sorted.length,
    median: quantile(sorted, 0.5),
    low: quantile(sorted, 0.25),
    high: quantile(sorted, 0.75),
  };
}

/** Times one thing. */
export async function measure(work: Work, { warmUp = 5, runs = 30 }: Effort = {}): Promise<Measurement> {
  for (let run = 0; run < warmUp; run += 1) await timeOnce(work);
  const times: number[] = [];
  for (let run = 0; run < runs; run += 1) times.push(await timeOnce(work));
  return summarize(times);
}

/**
 * Times two things turn by turn in one run, each going first every other time, so that a machine that slows down on the
 * way slows both.
 */
export async function compare(
  first: Work,
  second: Work,
  { warmUp = 5, runs = 30 }: Effort = {},
): Promise<Comparison> {
  const firstTimes: number[] = [];
  const secondTimes: number[] = [];
  const ratios: number[] = [];
  for (let run = -warmUp; run < runs; run += 1) {
    const secondGoesFirst = run % 2 !== 0;
    const early = secondGoesFirst ? await timeOnce(second) : 0;
    const firstTime = await timeOnce(first);
    const secondTime = secondGoesFirst ? early : await timeOnce(second);
    if (run < 0) continue;
    firstTimes.push(firstTime);
    secondTimes.push(secondTime);
    ratios.push(secondTime / firstTime);
  }
  return { first: summarize(firstTimes), second: summarize(secondTimes), ratio: summarize(ratios) };
}

/** Prints one row: what was measured, its median, the middle half, and how many runs. */
export function printMeasurement(name: string, { median, low, high, runs }: Measurement): void {
  console.log(
    `${name.padEnd(56)} ${digits(median).padStart(8)} ms  (${digits(low)} to ${digits(high)}, ${runs} runs)`,
  );
}

/** Prints three rows: both ways, and how many times the second takes as long as the first. */
export function printComparison(
  names: readonly [string, string],
  { first, second, ratio }: Comparison,
): void {
  printMeasurement(names[0], first);
  printMeasurement(names[1], second);
  const spread = `(${digits(ratio.low)} to ${digits(ratio.high)}, ${ratio.runs} runs)`;
  console.log(
    `${`  ${names[1]} / ${names[0]}`.padEnd(56)} ${digits(ratio.median).padStart(8)} x   ${spread}`,
  );
}
