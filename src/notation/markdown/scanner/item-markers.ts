import { asterisk, closeParenthesis, dot, hyphen, isDigit, one, plus } from './characters';
import { blockIndentation } from './containers';
import type { ThematicBreaks } from './leaf-blocks';
import type { LineCursor } from './line-cursor';

const longestNumber = 9;

/** At most so many columns of blanks behind a marker belong to it; of more, all but one are indented code. */
const widestPadding = 4;

function isBullet(unit: number): boolean {
  return unit === hyphen || unit === asterisk || unit === plus;
}

/** Takes list item markers with the blanks around them, and tells about the last one taken. */
export class ItemMarkers {
  /** Offset of the marker. */
  start = 0;
  /** Its last character, by which lists differ. */
  marker = 0;
  /** Columns from the container's edge to the item's words. */
  size = 0;
  /** Nothing but blanks stands behind it. */
  startsBlank = false;
  /** Nothing at all stands behind it. */
  isBare = false;

  constructor(
    private readonly cursor: LineCursor,
    private readonly breaks: ThematicBreaks,
  ) {}

  /**
   * Takes a marker; when there is none, the cursor stays where it was.
   * @param interrupts Whether the item would interrupt another block: it must have words, and its number must be 1.
   * @param list The marker of the list that the item must belong to; 0 for any.
   */
  take(interrupts: boolean, list: number): boolean {
    const { cursor } = this;
    const { offset, column, pending } = cursor;
    const indentation = cursor.takeBlanks(blockIndentation);
    this.start = cursor.offset;
    if (!cursor.isAtBlank() && this.takeMarker(interrupts) && (list === 0 || list === this.marker)) {
      this.size = indentation + cursor.offset - this.start;
      if (this.takePadding(interrupts)) return true;
    }
    cursor.returnTo(offset, column, pending);
    return false;
  }

  private takeMarker(interrupts: boolean): boolean {
    const { cursor } = this;
    const first = cursor.unit();
    this.marker = first;
    if (isBullet(first)) {
      if (this.breaks.isAt(cursor.offset, cursor.end)) return false;
      cursor.take();
      return true;
    }
    let digits = 0;
    for (; isDigit(cursor.unit()); digits += 1) cursor.take();
    if (digits === 0 || digits > longestNumber) return false;
    if (interrupts && (digits > 1 || first !== one)) return false;
    this.marker = cursor.unit();
    if (this.marker !== dot && this.marker !== closeParenthesis) return false;
    cursor.take();
    return true;
  }

  /** Takes the blanks behind the marker that belong to it. */
  private takePadding(interrupts: boolean): boolean {
    const { cursor } = this;
    this.startsBlank = cursor.isBlankToEnd();
    this.isBare = cursor.offset === cursor.end;
    if (this.startsBlank) {
      this.size += 1;
      return !interrupts;
    }
    const { offset, column, pending } = cursor;
    let padding = cursor.takeBlanks(widestPadding);
    if (cursor.isAtBlank()) {
      cursor.returnTo(offset, column, pending);
      padding = cursor.takeBlanks(1);
    }
    this.size += padding;
    return padding > 0;
  }
}
