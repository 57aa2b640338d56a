import { backtick } from './characters';

/** Finds code spans in a text. The runs of backticks are counted once, so that no run is searched for in vain. */
export class CodeSpans {
  /** For each length, where the last run of so many backticks begins. */
  private lastRuns: Map<number, number> | undefined;

  constructor(private readonly text: string) {}

  /** Position behind the run of backticks at `position`. */
  runEnd(position: number): number {
    let at = position + 1;
    while (this.text.charCodeAt(at) === backtick) at += 1;
    return at;
  }

  /** Position behind the code span whose opening run stands from `start` to `behind`, or -1. */
  spanEnd(start: number, behind: number): number {
    const length = behind - start;
    if (start >= (this.runs().get(length) ?? -1)) return -1;
    for (let at = this.text.indexOf('`', behind); at >= 0; at = this.text.indexOf('`', at)) {
      const end = this.runEnd(at);
      if (end - at === length) return end;
      at = end;
    }
    return -1;
  }

  private runs(): Map<number, number> {
    if (!this.lastRuns) {
      this.lastRuns = new Map();
      for (let at = this.text.indexOf('`'); at >= 0; ) {
        const end = this.runEnd(at);
        this.lastRuns.set(end - at, at);
        at = this.text.indexOf('`', end);
      }
    }
    return this.lastRuns;
  }
}
