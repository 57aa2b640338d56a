/** How many inputs each reader is given: 7,000 in the ordinary tests, `FUZZ_RUNS` in a longer run. */
const runs = Number(process.env.FUZZ_RUNS ?? 7_000);

/** The seed of the inputs; `FUZZ_SEED` tries others. */
const seed = Number(process.env.FUZZ_SEED ?? 20260224);

/** Settings of a fuzzed property. */
export const fuzzRuns = { numRuns: runs, seed } as const;

/** Milliseconds that a fuzzed property may take. */
export const fuzzTimeout = 120_000 + runs * 10;
