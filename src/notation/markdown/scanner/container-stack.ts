import { asterisk, greater, hyphen, isDigit, plus } from './characters';
import { type Container, type List, takeQuoteMark } from './containers';
import { ItemMarkers } from './item-markers';
import type { ThematicBreaks } from './leaf-blocks';
import type { LineCursor } from './line-cursor';

/** How a line stands to the containers that were open before it. */
export interface LinePlace {
  /** So many of them it continues. */
  readonly continued: number;
  /** It does not continue all of them and opens none: only a paragraph may go on in it. */
  readonly isLazy: boolean;
}

function mayOpenContainer(unit: number): boolean {
  return unit === greater || unit === hyphen || unit === plus || unit === asterisk || isDigit(unit);
}

/**
 * The block quotes and list items that are open, from the outermost to the innermost. A line costs as many steps as it
 * has marks and indentation, and one for each container that it closes.
 */
export class ContainerStack {
  private readonly containers: Container[] = [];
  /** Indices of the block quotes among them. */
  private readonly quotes: number[] = [];
  private line = 0;
  /** End of the last line that has more than blanks and quote marks. */
  private wordsEnd = 0;
  /** Whether the line that is read opens an item. */
  private hasNewItem = false;
  private readonly markers: ItemMarkers;

  /** @param closeBlock Is called when a container opens behind or below the block that is open. */
  constructor(
    private readonly cursor: LineCursor,
    breaks: ThematicBreaks,
    private readonly closeBlock: () => void,
  ) {
    this.markers = new ItemMarkers(cursor, breaks);
  }

  /** The list whose item is the innermost container. */
  topList(): List | undefined {
    const top = this.containers.at(-1);
    return top?.kind === 'list' ? top : undefined;
  }

  /** Whether the words of the line stand right behind the marker of the list's item, or it is bare on the line above. */
  isDirectlyBehind(list: List): boolean {
    return list.line === this.line || (list.isBare && list.line === this.line - 1);
  }

  /**
   * Takes the marks of the containers at the head of a line.
   * @param isOpaque Whether the open block, if it goes on, may hold anything.
   * @param isInterruptible Whether a container would interrupt it.
   */
  enterLine(isOpaque: boolean, isInterruptible: boolean): LinePlace {
    this.line += 1;
    this.hasNewItem = false;
    const continued = this.continueAll();
    if (this.hasNewItem) {
      while (this.openOne(false, this.containers.length));
      return { continued: this.containers.length, isLazy: false };
    }
    const isWhole = continued === this.containers.length;
    if (isWhole && isOpaque) return { continued, isLazy: false };
    const interrupts = isWhole && isInterruptible;
    if (!this.openOne(interrupts, continued)) return { continued, isLazy: !isWhole };
    while (this.openOne(interrupts, this.containers.length));
    return { continued: this.containers.length, isLazy: false };
  }

  /** Remembers where the words of the line end: they belong to all containers that are open now. */
  leaveLine(hasWords: boolean): void {
    if (hasWords || this.hasNewItem) this.wordsEnd = this.cursor.end;
  }

  /** Closes all containers but the outermost `size`. */
  close(size: number): void {
    while (this.containers.length > size) {
      const container = this.containers.pop();
      if (container?.kind === 'list') container.item.end = this.wordsEnd;
      else this.quotes.pop();
    }
  }

  /** Passes the marks of open containers and gives how many the line continues. */
  private continueAll(): number {
    let index = 0;
    let quotesPassed = 0;
    for (let container = this.containers[0]; container; container = this.containers[index]) {
      if (container.kind === 'quote') {
        if (!takeQuoteMark(this.cursor)) break;
        quotesPassed += 1;
        index += 1;
      } else if (this.cursor.isBlankToEnd()) {
        // A blank line continues every item up to the next quote.
        index = this.quotes[quotesPassed] ?? this.containers.length;
        const top = index === this.containers.length ? this.topList() : undefined;
        if (top) top.staysBlank ||= top.startsBlank;
      } else {
        if (!this.continueItem(container, index)) break;
        index += 1;
        if (this.hasNewItem) break;
      }
    }
    return index;
  }

  /** Whether the line stands in the item or begins the next one of its list. */
  private continueItem(list: List, index: number): boolean {
    const mayStand = !list.staysBlank && this.cursor.isAtBlank();
    list.staysBlank = false;
    list.startsBlank = false;
    if (mayStand) {
      const { offset, column, pending } = this.cursor;
      if (this.cursor.takeBlanks(list.size) === list.size) return true;
      this.cursor.returnTo(offset, column, pending);
    }
    if (!mayOpenContainer(this.cursor.text.charCodeAt(this.cursor.wordsStart()))) return false;
    const { markers } = this;
    if (!markers.take(false, list.marker)) return false;
    this.closeBlock();
    this.close(index + 1);
    list.item.end = this.wordsEnd;
    list.item = { start: markers.start, end: markers.start };
    list.size = markers.size;
    list.startsBlank = markers.startsBlank;
    list.isBare = markers.isBare;
    list.hasBlocks = false;
    list.line = this.line;
    this.hasNewItem = true;
    return true;
  }

  /** Opens a container, if one begins here, in the outermost `size` containers. */
  private openOne(interrupts: boolean, size: number): boolean {
    const { cursor } = this;
    const unit = cursor.text.charCodeAt(cursor.wordsStart());
    if (!mayOpenContainer(unit)) return false;
    if (unit === greater) {
      if (!takeQuoteMark(cursor)) return false;
      this.makeRoom(size);
      this.quotes.push(this.containers.length);
      this.containers.push({ kind: 'quote' });
      return true;
    }
    if (!this.markers.take(interrupts, 0)) return false;
    this.makeRoom(size);
    this.containers.push(this.newList());
    this.hasNewItem = true;
    return true;
  }

  private makeRoom(size: number): void {
    this.closeBlock();
    this.close(size);
    const list = this.topList();
    if (list) list.hasBlocks = true;
  }

  private newList(): List {
    const { start, marker, size, startsBlank, isBare } = this.markers;
    return {
      kind: 'list',
      marker,
      size,
      startsBlank,
      staysBlank: false,
      isBare,
      item: { start, end: start },
      line: this.line,
      hasBlocks: false,
    };
  }
}
