/** Lets everything else that waits run, then goes on. */
export function pause(): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, 0));
}

/** Long work in slices: `pauseWhenDue` gives way as soon as a slice has lasted its time. */
export class WorkSlices {
  readonly #milliseconds: number;
  #begin = performance.now();

  /** @param milliseconds how long a slice may last; well under the frame time of an editor by default */
  constructor(milliseconds = 8) {
    this.#milliseconds = milliseconds;
  }

  /** @returns whether it gave way */
  async pauseWhenDue(): Promise<boolean> {
    if (performance.now() - this.#begin < this.#milliseconds) return false;
    await pause();
    this.#begin = performance.now();
    return true;
  }
}
