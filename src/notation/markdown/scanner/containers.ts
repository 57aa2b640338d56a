import { greater } from './characters';
import type { LineCursor } from './line-cursor';

/** Where a list item stands. */
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

/** Takes a quote's mark and one column behind it; the cursor stays where it was when there is none. */
export function takeQuoteMark(cursor: LineCursor): boolean {
  const { offset, column, pending } = cursor;
  cursor.takeBlanks(blockIndentation);
  if (cursor.isAtBlank() || cursor.unit() !== greater) {
    cursor.returnTo(offset, column, pending);
    return false;
  }
  cursor.take();
  cursor.takeBlanks(1);
  return true;
}
