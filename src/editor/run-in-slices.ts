/** How long the editor's other work waits at the most, in milliseconds. */
const longestSlice = 12;

/**
 * Runs a search that is cut into slices, and lets the editor's other work go on in between. To be stopped, the search
 * itself is told so.
 * @returns its answer.
 */
export async function runInSlices<Answer>(slices: Iterator<unknown, Answer, void>): Promise<Answer> {
  let since = performance.now();
  for (;;) {
    const step = slices.next();
    if (step.done === true) return step.value;
    if (performance.now() - since < longestSlice) continue;
    await new Promise<void>((resolve) => setTimeout(resolve));
    since = performance.now();
  }
}
