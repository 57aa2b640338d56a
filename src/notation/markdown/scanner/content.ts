import { tab } from './characters';

/** A source line of a paragraph, or of what may become one. */
interface ContentLine {
  /** Behind the marks of its containers; on the first line behind its blanks too. */
  readonly start: number;
  readonly end: number;
  /** Column of `start`, and the columns of a tab before it that belong to the line. */
  readonly column: number;
  readonly pending: number;
}

/**
 * Lines of one block as one text, joined by line feeds, without the marks of containers. Positions count the
 * characters of that text, offsets those of the note.
 */
export class Content {
  private readonly lines: ContentLine[] = [];
  /** Positions at which the lines begin. */
  private readonly starts: number[] = [];
  private joined: string | undefined;
  private lastLine = 0;
  /** A position in the last line asked for whose column is known, so that columns are counted once. */
  private columnAt = -1;
  private column = 0;

  constructor(private readonly note: string) {}

  get lineCount(): number {
    return this.lines.length;
  }

  /** Offset of the first character. */
  get start(): number {
    return this.lines[0]?.start ?? 0;
  }

  /** Offset of the end of the last line. */
  get end(): number {
    return this.lines.at(-1)?.end ?? 0;
  }

  add(start: number, end: number, column: number, pending: number): void {
    this.lines.push({ start, end, column, pending });
    this.joined = undefined;
  }

  line(index: number): ContentLine | undefined {
    return this.lines[index];
  }

  /** The whole text. */
  get text(): string {
    if (this.joined === undefined) {
      this.starts.length = 0;
      let position = 0;
      const parts: string[] = [];
      for (const { start, end, pending } of this.lines) {
        this.starts.push(position);
        parts.push(' '.repeat(pending) + this.note.slice(start, end));
        position += pending + end - start + 1;
      }
      this.joined = parts.join('\n');
    }
    return this.joined;
  }

  /** The position at which line `index` begins. */
  startOf(index: number): number {
    return this.text === '' ? 0 : (this.starts[index] ?? this.text.length);
  }

  /** The index of the line in which `position` stands; fast when it is near the one asked for before. */
  lineOf(position: number): number {
    while (this.lastLine > 0 && position < this.startOf(this.lastLine)) this.lastLine -= 1;
    while (this.lastLine + 1 < this.lines.length && this.startOf(this.lastLine + 1) <= position)
      this.lastLine += 1;
    return this.lastLine;
  }

  /** The offset in the note of a position in the text. */
  offsetOf(position: number): number {
    const index = this.lineOf(position);
    const line = this.lines[index];
    return line ? Math.max(line.start, line.start - line.pending + position - this.startOf(index)) : 0;
  }

  /** How many columns the tab at `position` takes. */
  tabWidth(position: number): number {
    const index = this.lineOf(position);
    const start = this.startOf(index);
    if (this.columnAt < start || this.columnAt > position) {
      this.columnAt = start;
      this.column = (this.lines[index]?.column ?? 0) - (this.lines[index]?.pending ?? 0);
    }
    for (; this.columnAt < position; this.columnAt += 1)
      this.column += this.text.charCodeAt(this.columnAt) === tab ? 4 - (this.column % 4) : 1;
    return 4 - (this.column % 4);
  }
}
