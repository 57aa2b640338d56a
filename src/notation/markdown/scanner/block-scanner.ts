import { backslash, closeBracket, colon, equals, hash, hyphen, less, openBracket } from './characters';
import { ContainerStack } from './container-stack';
import { blockIndentation, type List } from './containers';
import { Content } from './content';
import { passDefinitions } from './definitions';
import { DraftHeadings } from './draft-headings';
import { DraftLines } from './draft-lines';
import { closesHtml, type HtmlKind, htmlStart } from './html-blocks';
import {
  atxDepth,
  atxWords,
  closesFence,
  fenceLength,
  isSetextUnderline,
  ThematicBreaks,
} from './leaf-blocks';
import { LineCursor } from './line-cursor';
import { LineEndings } from './line-endings';

/** Indentation that makes indented code. */
const codeIndentation = blockIndentation + 1;

/** A paragraph, or what may become one. */
interface OpenContent {
  readonly kind: 'content';
  readonly content: Content;
  /** The list whose item it opens. */
  readonly opens: List | undefined;
  readonly mayHaveBox: boolean;
}

/** The block that the next line may continue. */
type OpenBlock =
  | { readonly kind: 'none' | 'code' }
  | { readonly kind: 'fence'; readonly marker: number; readonly length: number }
  | { readonly kind: 'html'; readonly html: HtmlKind }
  | OpenContent;

const none: OpenBlock = { kind: 'none' };

/**
 * Reads a note's blocks line by line, as CommonMark 0.31.2, sections 3 to 5, tells: which containers a line continues,
 * which it opens, and what its words belong to. A line's words are passed a fixed number of times, so the steps are in
 * proportion to the text whatever it holds.
 */
export class BlockScanner {
  readonly lines: DraftLines;
  readonly headings = new DraftHeadings();
  /** Labels of link reference definitions. */
  readonly labels = new Set<string>();

  private readonly cursor: LineCursor;
  private readonly endings: LineEndings;
  private readonly breaks: ThematicBreaks;
  private readonly containers: ContainerStack;
  private open: OpenBlock = none;

  constructor(private readonly note: string) {
    this.endings = new LineEndings(note);
    this.lines = new DraftLines(note, this.endings);
    this.cursor = new LineCursor(note);
    this.breaks = new ThematicBreaks(note);
    this.containers = new ContainerStack(this.cursor, this.breaks, () => this.closeBlock());
  }

  /** Reads all lines from offset `from` on. */
  scan(from: number): void {
    for (let start = from; start < this.note.length; ) {
      const end = this.endings.endOfLine(start);
      this.cursor.openLine(start, end);
      this.readLine();
      start = this.endings.behind(end);
    }
    this.closeBlock();
    this.containers.close(0);
  }

  private readLine(): void {
    const { containers, open } = this;
    const isOpaque = open.kind === 'fence' || open.kind === 'html';
    const isInterruptible = open.kind === 'content' || open.kind === 'code';
    const place = containers.enterLine(isOpaque, isInterruptible);
    const isBlank = this.cursor.isBlankToEnd();
    this.readBlock(place.isLazy, place.continued, isBlank);
    containers.leaveLine(!isBlank);
  }

  /** Gives the line to the open block, or closes that and opens another. */
  private readBlock(isLazy: boolean, continued: number, isBlank: boolean): void {
    if (this.continueBlock(isLazy, isBlank)) return;
    this.closeBlock();
    // A line that continues no paragraph and not all containers is outside those.
    if (isLazy) this.containers.close(continued);
    if (!isBlank) this.openBlock(isLazy);
  }

  private continueBlock(isLazy: boolean, isBlank: boolean): boolean {
    const { open, cursor } = this;
    switch (open.kind) {
      case 'none':
        return false;
      case 'code':
        return !isLazy && (isBlank || cursor.isIndentedBy(codeIndentation));
      case 'fence':
        if (!isLazy && this.isFenceClosed(open.marker, open.length)) this.open = none;
        return !isLazy;
      case 'html':
        if (isLazy || (isBlank && open.html >= 6)) return false;
        if (closesHtml(this.note, cursor.offset, cursor.end, open.html)) this.open = none;
        return true;
      default:
        return !isBlank && this.continueContent(open, isLazy);
    }
  }

  private isFenceClosed(marker: number, length: number): boolean {
    const { cursor } = this;
    cursor.takeBlanks(blockIndentation);
    return !cursor.isAtBlank() && closesFence(this.note, cursor.offset, cursor.end, marker, length);
  }

  /** Whether the line belongs to the open paragraph or made a heading of it. */
  private continueContent(open: OpenContent, isLazy: boolean): boolean {
    const { cursor, note } = this;
    if (!cursor.isIndentedBy(codeIndentation)) {
      const start = cursor.wordsStart();
      const unit = note.charCodeAt(start);
      if (!isLazy && (unit === equals || unit === hyphen) && isSetextUnderline(note, start, cursor.end))
        return this.closeAsHeading(open, unit === equals ? 1 : 2);
      if (unit === less) {
        const html = htmlStart(note, start, cursor.end, !isLazy);
        // The tree's parser takes kind 7 for a part of the containers that a lazy line does not continue, but not
        // where the text ends with the line.
        if (html?.kind === 7 && cursor.end < note.length) {
          this.closeBlock();
          this.open = { kind: 'html', html: 7 };
          return true;
        }
        if (html) return false;
      } else if (this.isLeafStart(start, unit)) return false;
    }
    open.content.add(cursor.offset, cursor.end, cursor.column, cursor.pending);
    return true;
  }

  /** Whether a heading, a thematic break or a fence begins here. */
  private isLeafStart(start: number, unit: number): boolean {
    const { end } = this.cursor;
    return (
      (unit === hash && atxDepth(this.note, start, end) > 0) ||
      this.breaks.isAt(start, end) ||
      fenceLength(this.note, start, end) > 0
    );
  }

  private openBlock(isLazy: boolean): void {
    const { cursor, note, containers } = this;
    const list = containers.topList();
    const opens = list && !list.hasBlocks ? list : undefined;
    if (list) list.hasBlocks = true;
    if (cursor.isIndentedBy(codeIndentation)) {
      // On a lazy line the code is over with the line.
      this.open = isLazy ? none : { kind: 'code' };
      return;
    }
    const blanks = cursor.takeBlanks(blockIndentation);
    const start = cursor.offset;
    const unit = note.charCodeAt(start);
    if (unit === hash) {
      const depth = atxDepth(note, start, cursor.end);
      if (depth > 0) {
        this.addHeading(depth);
        return;
      }
    } else if (unit === less) {
      const html = htmlStart(note, start, cursor.end, false);
      if (html) {
        const isClosed = closesHtml(note, html.searchFrom, cursor.end, html.kind);
        this.open = isClosed ? none : { kind: 'html', html: html.kind };
        return;
      }
    } else if (this.breaks.isAt(start, cursor.end)) return;
    else {
      const length = fenceLength(note, start, cursor.end);
      if (length > 0) {
        this.open = { kind: 'fence', marker: unit, length };
        return;
      }
    }
    const content = new Content(note);
    content.add(start, cursor.end, cursor.column, 0);
    const mayHaveBox = opens !== undefined && blanks === 0 && containers.isDirectlyBehind(opens);
    this.open = { kind: 'content', content, opens, mayHaveBox };
  }

  private addHeading(depth: number): void {
    const { offset, end } = this.cursor;
    const words = atxWords(this.note, offset, end);
    const content = new Content(this.note);
    content.add(words.start, words.end, 0, 0);
    this.headings.add(depth, { start: offset, end }, content);
  }

  private closeAsHeading({ content }: OpenContent, depth: number): boolean {
    const from = this.wordsStart(content);
    this.open = none;
    if (from < 0) return false;
    this.headings.add(depth, { start: content.start, end: this.cursor.end }, content, from);
    return true;
  }

  private closeBlock(): void {
    const { open } = this;
    this.open = none;
    if (open.kind !== 'content') return;
    const from = this.wordsStart(open.content);
    if (from < 0) return;
    const item = from === 0 ? open.opens?.item : undefined;
    this.lines.addParagraph(open.content, from, { item, mayHaveBox: open.mayHaveBox });
  }

  /** Position in a finished block at which its words begin, or -1 when it is all link reference definitions. */
  private wordsStart(content: Content): number {
    const { note } = this;
    const { start } = content;
    if (note.charCodeAt(start) !== openBracket) return 0;
    // A task box is no label, and common.
    const isOneLong = note.charCodeAt(start + 1) !== backslash && note.charCodeAt(start + 2) === closeBracket;
    if (isOneLong && note.charCodeAt(start + 3) !== colon) return 0;
    const from = passDefinitions(content, this.labels);
    return from < content.text.length ? from : -1;
  }
}
