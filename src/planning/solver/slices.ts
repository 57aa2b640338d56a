/**
 * Long work in slices. A search is a generator that yields, often, how much it has done since the last
 * time; here such small steps are gathered into slices, between which the caller may let others work, and
 * stop. There is no clock: a slice is a number of nodes, the same on every machine.
 */

/** Work that yields the number of nodes done since it yielded last, and returns its result. */
export type Steps<T> = Generator<number, T, void>;

/** How to slice. */
export interface SliceOptions {
  /** Nodes in a slice; 4000 when absent, a few milliseconds. */
  readonly nodesPerSlice?: number;
  /** Asked after each slice; `true` ends the work. */
  readonly shouldStop?: () => boolean;
}

/** What a slice reports. */
export interface SliceProgress {
  /** Nodes done so far. */
  readonly nodes: number;
}

const NODES_PER_SLICE = 4000;
/** A step counts a little even when no node was made, so that slices end in stretches without any. */
const STEP = 0.25;

/**
 * Runs steps in slices.
 * @returns the result, or `undefined` when it was stopped.
 */
export function* inSlices<T>(
  steps: Steps<T>,
  options: SliceOptions = {},
): Generator<SliceProgress, T | undefined, void> {
  const slice = options.nodesPerSlice ?? NODES_PER_SLICE;
  let nodes = 0;
  let work = 0;
  for (;;) {
    const step = steps.next();
    if (step.done === true) return step.value;
    nodes += step.value;
    work += step.value + STEP;
    if (work < slice) continue;
    work = 0;
    yield { nodes };
    if (options.shouldStop?.() === true) return undefined;
  }
}

/** Runs steps to the end at once. */
export function finish<T>(steps: Generator<unknown, T, void>): T {
  for (;;) {
    const step = steps.next();
    if (step.done === true) return step.value;
  }
}
