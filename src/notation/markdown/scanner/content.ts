import { tab } from './characters';

/** Numbers kept for each line: its start, its end, the column of its start, and columns of a tab before that. */
const stride = 4;

/**
 * Lines of one block as one text, joined by line feeds, without the marks of containers. Positions count the
 * characters of that text, offsets those of the note.
 */
export class Content {
  /** Flat, because most blocks have one line and a note has many of them. */
  private readonly lines: number[] = [];
  /** Positions at which the lines begin, when the text is joined. */
  private starts: number[] | undefined;
  private joined: string | undefined;
  private lastLine = 0;
  /** A position in the last line asked for whose column is known, so that columns are counted once. */
  private columnAt = -1;
  private column = 0;

  constructor(private readonly note: string) {}

  get lineCount(): number {
    return this.lines.length / stride;
  }

  /** Offset of the first character. */
  get start(): number {
    return this.lineStart(0);
  }

  /**
   * Adds a source line.
   * @param start Behind the marks of the containers; on the first line behind the blanks too.
   * @param column The column of `start`.
   * @param pending Columns of the tab before `start` that belong to the line.
   */
  add(start: number, end: number, column: number, pending: number): void {
    this.lines.push(start, end, column, pending);
    this.joined = undefined;
  }

  /** Offset at which line `index` begins. */
  lineStart(index: number): number {
    return this.lines[index * stride] ?? 0;
  }

  /** Offset at which line `index` ends. */
  lineEnd(index: number): number {
    return this.lines[index * stride + 1] ?? 0;
  }

  private pending(index: number): number {
    return this.lines[index * stride + 3] ?? 0;
  }

  /** The whole text. */
  get text(): string {
    this.joined ??= this.join();
    return this.joined;
  }

  private join(): string {
    if (this.lines.length === stride) return this.note.slice(this.lineStart(0), this.lineEnd(0));
    const starts: number[] = [];
    const parts: string[] = [];
    let position = 0;
    for (let index = 0; index < this.lineCount; index += 1) {
      const pending = this.pending(index);
      const part = this.note.slice(this.lineStart(index), this.lineEnd(index));
      starts.push(position);
      parts.push(pending > 0 ? ' '.repeat(pending) + part : part);
      position += pending + part.length + 1;
    }
    this.starts = starts;
    return parts.join('\n');
  }

  /** The position at which line `index` begins. */
  private startOf(index: number): number {
    if (index === 0 || this.text === '') return 0;
    return this.starts?.[index] ?? 0;
  }

  /** The index of the line in which `position` stands; fast when it is near the one asked for before. */
  lineOf(position: number): number {
    if (position === 0) return 0;
    while (this.lastLine > 0 && position < this.startOf(this.lastLine)) this.lastLine -= 1;
    while (this.lastLine + 1 < this.lineCount && this.startOf(this.lastLine + 1) <= position)
      this.lastLine += 1;
    return this.lastLine;
  }

  /** The offset in the note of a position in the text. */
  offsetOf(position: number): number {
    const index = this.lineOf(position);
    const start = this.lineStart(index);
    return Math.max(start, start - this.pending(index) + position - this.startOf(index));
  }

  /** How many columns the tab at `position` takes. */
  tabWidth(position: number): number {
    const index = this.lineOf(position);
    const start = this.startOf(index);
    if (this.columnAt < start || this.columnAt > position) {
      this.columnAt = start;
      this.column = (this.lines[index * stride + 2] ?? 0) - this.pending(index);
    }
    for (; this.columnAt < position; this.columnAt += 1)
      this.column += this.text.charCodeAt(this.columnAt) === tab ? 4 - (this.column % 4) : 1;
    return 4 - (this.column % 4);
  }
}
