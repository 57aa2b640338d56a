/** What both runners need of a test, in Node and in the browser's worker. */
interface RunTest {
  fullTitle(): string;
}

/** What both runners need of mocha's events. */
interface RunEvents {
  on(event: 'pass' | 'pending', listener: (test: RunTest) => void): unknown;
  on(event: 'fail' | 'retry', listener: (test: RunTest, error: unknown) => void): unknown;
  once(event: 'end', listener: () => void): unknown;
}

/**
 * How often a test that did not hold is run again. An editor that starts beside others on a busy machine loses a
 * keystroke or an event now and then; what does not hold twice is a fault. Each second try is told of.
 */
export const secondTries = 1;

/** How many tests held, and how many did not. A test that was left out did not hold. */
export interface Counts {
  readonly passed: number;
  readonly failed: number;
}

/**
 * Prints each test as it ends and, at last, one line that `scripts/test.mjs` reads the counts from. What a test host
 * prints is the only thing that comes out of it on every road.
 * @returns the counts, when the run has ended
 */
export function reportRun(title: string, events: RunEvents): Promise<Counts> {
  let passed = 0;
  let failed = 0;
  events.on('pass', (test) => {
    passed += 1;
    console.log(`  held: ${test.fullTitle()}`);
  });
  events.on('fail', (test, error) => {
    failed += 1;
    console.log(`  FAILED: ${test.fullTitle()}\n${error instanceof Error ? error.stack : String(error)}`);
  });
  events.on('retry', (test, error) => {
    console.log(`  AGAIN: ${test.fullTitle()}\n${error instanceof Error ? error.stack : String(error)}`);
  });
  events.on('pending', (test) => {
    failed += 1;
    console.log(`  LEFT OUT: ${test.fullTitle()}`);
  });
  return new Promise((resolve) => {
    events.once('end', () => {
      console.log(`${title}: ${passed} passed, ${failed} failed`);
      resolve({ passed, failed });
    });
  });
}
