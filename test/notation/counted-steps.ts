import { Session } from 'node:inspector';
import { setFlagsFromString } from 'node:v8';

/** A block of code that ran, and how often. */
interface CoverageRange {
  readonly count: number;
}

interface ScriptCoverage {
  readonly url: string;
  readonly functions: readonly { readonly ranges: readonly CoverageRange[] }[];
}

/** Characters that built-in searches and copies pass over while `work` runs; they are steps that no block shows. */
function countingCharacters(work: () => void): number {
  let characters = 0;
  const { indexOf, slice } = String.prototype;
  const { exec } = RegExp.prototype;
  String.prototype.indexOf = function (this: string, searched: string, from = 0) {
    const found = indexOf.call(this, searched, from);
    characters += (found < 0 ? this.length : found) - from;
    return found;
  };
  String.prototype.slice = function (this: string, start?: number, end?: number) {
    const copy = slice.call(this, start, end);
    characters += copy.length;
    return copy;
  };
  RegExp.prototype.exec = function (this: RegExp, text: string) {
    const from = this.global || this.sticky ? this.lastIndex : 0;
    const found = exec.call(this, text);
    characters += (found ? found.index : text.length) - from;
    return found;
  };
  try {
    work();
  } finally {
    String.prototype.indexOf = indexOf;
    String.prototype.slice = slice;
    RegExp.prototype.exec = exec;
  }
  return characters;
}

/** Functions whose code is longer are not optimized; V8's own limit, and none at all. */
const optimized = '--max-optimized-bytecode-size=61440';
const notOptimized = '--max-optimized-bytecode-size=0';

/**
 * Counts the steps of work: blocks of the project's code that run (functions, loop bodies, branches), as V8's coverage
 * counts them in code that is not optimized, and characters that built-in searches and copies pass over. The same work
 * takes the same steps on every machine.
 */
export class StepCounter {
  private readonly session = new Session();

  start(): void {
    setFlagsFromString(notOptimized);
    this.session.connect();
    this.session.post('Profiler.enable');
    this.session.post('Profiler.startPreciseCoverage', { callCount: true, detailed: true });
  }

  stop(): void {
    this.session.post('Profiler.stopPreciseCoverage');
    this.session.post('Profiler.disable');
    this.session.disconnect();
    setFlagsFromString(optimized);
  }

  count(work: () => void): number {
    this.takeBlocks();
    const characters = countingCharacters(work);
    return characters + this.takeBlocks();
  }

  /** How often blocks ran since the last call. */
  private takeBlocks(): number {
    let blocks = 0;
    this.session.post('Profiler.takePreciseCoverage', (error, { result }) => {
      if (error) throw error;
      for (const script of result as readonly ScriptCoverage[])
        if (script.url.startsWith('file:') && !script.url.includes('node_modules'))
          for (const { ranges } of script.functions) for (const { count } of ranges) blocks += count;
    });
    return blocks;
  }
}
