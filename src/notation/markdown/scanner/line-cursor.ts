import { isBlank, space, tab } from './characters';

/**
 * A place in one source line, counted in characters and in columns: a tab reaches to the next multiple of four
 * columns, and a block may take a part of its columns.
 */
export class LineCursor {
  offset = 0;
  /** Where the line ends, its ending left out. */
  end = 0;
  /** Columns up to `offset`, from 0. */
  column = 0;
  /** Columns of the tab before `offset` that are not taken yet. */
  pending = 0;
  /** A stretch of blanks and what stands behind it, kept so that blanks are passed once. */
  private blanksStart = 0;
  private blanksEnd = -1;

  constructor(readonly text: string) {}

  openLine(start: number, end: number): void {
    this.offset = start;
    this.end = end;
    this.column = 0;
    this.pending = 0;
    this.blanksStart = start;
    this.blanksEnd = -1;
  }

  /** The character at the cursor, or `NaN` at the end of the line. */
  unit(): number {
    return this.offset < this.end ? this.text.charCodeAt(this.offset) : Number.NaN;
  }

  /** Takes one character that is no tab. */
  take(): void {
    this.offset += 1;
    this.column += 1;
  }

  /** Takes at most `limit` columns of blanks and says how many. */
  takeBlanks(limit: number): number {
    let taken = 0;
    while (taken < limit) {
      if (this.pending > 0) {
        const part = Math.min(this.pending, limit - taken);
        this.pending -= part;
        taken += part;
        continue;
      }
      const unit = this.unit();
      if (unit === space) {
        this.take();
        taken += 1;
      } else if (unit === tab) {
        this.pending = 4 - (this.column % 4);
        this.column += this.pending;
        this.offset += 1;
      } else break;
    }
    return taken;
  }

  isAtBlank(): boolean {
    return this.pending > 0 || isBlank(this.unit());
  }

  /** Offset of the first character that is no blank, or the end of the line. */
  wordsStart(): number {
    if (this.offset < this.blanksStart || this.offset > this.blanksEnd) {
      let words = this.offset;
      while (words < this.end && isBlank(this.text.charCodeAt(words))) words += 1;
      this.blanksStart = this.offset;
      this.blanksEnd = words;
    }
    return this.blanksEnd;
  }

  /** Whether nothing but blanks is left. */
  isBlankToEnd(): boolean {
    return this.wordsStart() === this.end;
  }

  /** Whether at least `columns` columns of blanks come next. */
  isIndentedBy(columns: number): boolean {
    if (!this.isAtBlank()) return false;
    const { offset, column, pending } = this;
    const taken = this.takeBlanks(columns);
    this.returnTo(offset, column, pending);
    return taken === columns;
  }

  /** Goes back to a place on the line where the cursor was. */
  returnTo(offset: number, column: number, pending: number): void {
    this.offset = offset;
    this.column = column;
    this.pending = pending;
  }
}
