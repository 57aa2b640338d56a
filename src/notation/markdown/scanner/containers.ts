import { asterisk, closeParenthesis, dot, greater, hyphen, isDigit, plus } from './characters';
import type { ThematicBreaks } from './leaf-blocks';
import type { LineCursor } from './line-cursor';

/** A list item that stands before the words of a line. */
export interface ItemDraft {
  readonly start: number;
  /** Known when the item is closed. */
  end: number;
}

/** An open block quote. */
export interface Quote {
  readonly kind: 'quote';
}

/** An open list with its last item. */
export interface List {
  readonly kind: 'list';
  /** `*`, `+`, `-`, `.` or `)`. */
  readonly marker: number;
  /** Columns that belong to the item before its words. */
  size: number;
  /** The item's first line is blank behind the marker. */
  startsBlank: boolean;
  /** It is, and so is the line below: what follows is not in the item. */
  staysBlank: boolean;
  item: ItemDraft;
  /** Number of the line with the marker. */
  line: number;
  /** Whether nothing at all, blanks neither, stands behind the marker. */
  isBare: boolean;
  /** Whether a block stands in the item. */
  hasBlocks: boolean;
}

export type Container = Quote | List;

/** At most so many columns of blanks may stand before a block that is not indented code. */
export const blockIndentation = 3;

const longestNumber = 9;

/** A list item's marker with the blanks that belong to it. */
export interface ItemStart {
  readonly start: number;
  readonly marker: number;
  readonly size: number;
  readonly startsBlank: boolean;
  readonly isBare: boolean;
}

/** Takes a quote's mark and one column behind it; the cursor stays where it was when there is none. */
export function takeQuoteMark(cursor: LineCursor): boolean {
  const place = cursor.place();
  cursor.takeBlanks(blockIndentation);
  if (cursor.isAtBlank() || cursor.unit() !== greater) {
    cursor.returnTo(place);
    return false;
  }
  cursor.take();
  cursor.takeBlanks(1);
  return true;
}

function isBullet(unit: number): boolean {
  return unit === hyphen || unit === asterisk || unit === plus;
}

/** Takes the digits of a number and gives how many, 0 when too many stand there. */
function takeNumber(cursor: LineCursor): number {
  let digits = 0;
  while (isDigit(cursor.unit())) {
    digits += 1;
    if (digits > longestNumber) return 0;
    cursor.take();
  }
  return digits;
}

/** Takes a marker and gives its last character, or `undefined`. */
function takeMarker(
  cursor: LineCursor,
  breaks: ThematicBreaks,
  interrupts: boolean,
): { marker: number; width: number } | undefined {
  const unit = cursor.unit();
  if (isBullet(unit)) {
    if (breaks.isAt(cursor.offset, cursor.end)) return undefined;
    cursor.take();
    return { marker: unit, width: 1 };
  }
  const first = unit;
  const digits = takeNumber(cursor);
  if (digits === 0 || (interrupts && (digits > 1 || first !== 0x31))) return undefined;
  const marker = cursor.unit();
  if (marker !== dot && marker !== closeParenthesis) return undefined;
  cursor.take();
  return { marker, width: digits + 1 };
}

/**
 * Takes a list item's marker with the blanks before and behind it. When there is none, the cursor stays where it
 * was.
 * @param interrupts Whether the item would interrupt another block: it must have words, and its number must be 1.
 * @param marker The list that the item must belong to.
 */
export function takeItemStart(
  cursor: LineCursor,
  breaks: ThematicBreaks,
  interrupts: boolean,
  marker?: number,
): ItemStart | undefined {
  const place = cursor.place();
  const indentation = cursor.takeBlanks(blockIndentation);
  const start = cursor.offset;
  const taken = cursor.isAtBlank() ? undefined : takeMarker(cursor, breaks, interrupts);
  if (taken && (marker === undefined || marker === taken.marker)) {
    const width = indentation + taken.width;
    const found = { start, marker: taken.marker };
    if (cursor.isBlankToEnd()) {
      if (!interrupts)
        return { ...found, size: width + 1, startsBlank: true, isBare: cursor.offset === cursor.end };
    } else {
      const behind = cursor.place();
      const blanks = cursor.takeBlanks(4);
      if (blanks > 0 && !cursor.isAtBlank())
        return { ...found, size: width + blanks, startsBlank: false, isBare: false };
      cursor.returnTo(behind);
      if (cursor.takeBlanks(1) === 1) return { ...found, size: width + 1, startsBlank: false, isBare: false };
    }
  }
  cursor.returnTo(place);
  return undefined;
}
