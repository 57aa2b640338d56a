import { carriageReturn, lineFeed } from './characters';

/** Offset of the next `character` at or behind `from`, or the end of the text. */
function next(text: string, character: string, from: number): number {
  const offset = text.indexOf(character, from);
  return offset < 0 ? text.length : offset;
}

/** Finds the ends of a text's lines, in rising order; LF, CRLF and a lone CR each end a line. */
export class LineEndings {
  private feed: number;
  private carriage: number;

  constructor(private readonly text: string) {
    this.feed = next(text, '\n', 0);
    this.carriage = next(text, '\r', 0);
  }

  /** Where the line that begins at `start` ends, its ending left out. */
  endOfLine(start: number): number {
    if (this.feed < start) this.feed = next(this.text, '\n', start);
    if (this.carriage < start) this.carriage = next(this.text, '\r', start);
    return this.feed < this.carriage ? this.feed : this.carriage;
  }

  /** Where the line behind the one that ends at `end` begins. */
  behind(end: number): number {
    const isPair = this.text.charCodeAt(end) === carriageReturn && this.text.charCodeAt(end + 1) === lineFeed;
    return end + (isPair ? 2 : 1);
  }
}
