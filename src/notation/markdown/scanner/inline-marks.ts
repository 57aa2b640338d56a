import {
  backslash,
  backtick,
  closeBracket,
  closeParenthesis,
  exclamation,
  isPunctuation,
  less,
  openBracket,
  openParenthesis,
} from './characters';
import { CodeSpans } from './code-spans';
import type { Content } from './content';
import { AngleBrackets } from './inline-html';
import { labelEnd, nextBracket, normalizedLabel } from './labels';
import { destinationEnd, skipWhitespace, titleCloser, titleEnd } from './link-parts';

/** A part of a paragraph that is more than words and emphasis, from `start` to `end` in the paragraph's text. */
export interface InlineMark {
  readonly kind: 'code' | 'html' | 'autolink' | 'link' | 'image';
  readonly start: number;
  readonly end: number;
  /** The words between the marks: of code, the code; of a link, what is shown. */
  readonly wordsStart: number;
  readonly wordsEnd: number;
  /** The marks in the words of a link or an image. */
  readonly children: readonly InlineMark[];
  /** How many marks stand in one another here, this one included. */
  readonly depth: number;
}

/** A `[` or `![` that may open a link or an image. */
interface Opener {
  readonly start: number;
  readonly wordsStart: number;
  readonly isImage: boolean;
}

/** CommonMark leaves the depth of parentheses in a destination open above three; the tree's parser takes 32. */
const deepestParentheses = 32;

/** A title in brackets that was searched for: where its end is, and what stands behind it. */
interface KnownTitle {
  readonly from: number;
  /** Position behind the title, or -1. */
  readonly end: number;
  /** Position behind the bracket that closes the resource, or -1. */
  readonly resourceEnd: number;
}

/**
 * Finds code, HTML, links and images in a paragraph, from left to right: the first to close wins, and links do not
 * contain links (CommonMark 0.31.2, section 6). All searches together take steps in proportion to the text.
 */
class InlineReader {
  private readonly text: string;
  private readonly special = /[`<[\]!\\]/g;
  private readonly code: CodeSpans;
  private readonly angles: AngleBrackets;
  private readonly titles = new Map<number, KnownTitle>();
  private readonly openers: Opener[] = [];
  /** Of the openers, so many stand before a link that has closed and cannot open a link any more. */
  private inactive = 0;
  private readonly marks: InlineMark[] = [];

  constructor(
    private readonly content: Content,
    private readonly labels: ReadonlySet<string>,
  ) {
    this.text = content.text;
    this.code = new CodeSpans(this.text);
    this.angles = new AngleBrackets(this.text);
  }

  read(from: number): readonly InlineMark[] {
    let at = this.nextSpecial(from);
    while (at >= 0) at = this.nextSpecial(this.readAt(at));
    return this.marks;
  }

  private nextSpecial(from: number): number {
    this.special.lastIndex = from;
    return this.special.exec(this.text)?.index ?? -1;
  }

  /** Reads what stands at `position` and gives the position behind it. */
  private readAt(position: number): number {
    switch (this.text.charCodeAt(position)) {
      case backtick:
        return this.readCode(position);
      case less:
        return this.readAngle(position);
      case backslash:
        return position + (isPunctuation(this.text.charCodeAt(position + 1)) ? 2 : 1);
      case openBracket:
        this.openers.push({ start: position, wordsStart: position + 1, isImage: false });
        return position + 1;
      case exclamation:
        if (this.text.charCodeAt(position + 1) !== openBracket) return position + 1;
        this.openers.push({ start: position, wordsStart: position + 2, isImage: true });
        return position + 2;
      default:
        return this.readClosing(position);
    }
  }

  private readCode(position: number): number {
    const behind = this.code.runEnd(position);
    const end = this.code.spanEnd(position, behind);
    if (end < 0) return behind;
    this.add('code', position, end, behind, end - (behind - position));
    return end;
  }

  private readAngle(position: number): number {
    const link = this.angles.autolinkEnd(position);
    if (link >= 0) {
      this.add('autolink', position, link, position + 1, link - 1);
      return link;
    }
    const html = this.angles.htmlEnd(position);
    if (html < 0) return position + 1;
    this.add('html', position, html, position, html);
    return html;
  }

  private add(
    kind: InlineMark['kind'],
    start: number,
    end: number,
    wordsStart: number,
    wordsEnd: number,
  ): void {
    this.marks.push({ kind, start, end, wordsStart, wordsEnd, children: [], depth: 1 });
  }

  /** Reads a `]`: with the last opener that is left it may make a link or an image. */
  private readClosing(position: number): number {
    const opener = this.openers.pop();
    if (!opener) return position + 1;
    const wasActive = this.openers.length >= this.inactive;
    this.inactive = Math.min(this.inactive, this.openers.length);
    const end = wasActive || opener.isImage ? this.targetEnd(opener, position) : -1;
    if (end < 0) return position + 1;
    let first = this.marks.length;
    while (first > 0 && (this.marks[first - 1]?.start ?? -1) >= opener.start) first -= 1;
    const children = this.marks.splice(first);
    this.marks.push({
      kind: opener.isImage ? 'image' : 'link',
      start: opener.start,
      end,
      wordsStart: opener.wordsStart,
      wordsEnd: position,
      children,
      depth: children.reduce((depth, child) => Math.max(depth, child.depth + 1), 1),
    });
    if (!opener.isImage) this.inactive = this.openers.length;
    return end;
  }

  /** Position behind the resource or reference that makes the words before the `]` a link, or -1. */
  private targetEnd(opener: Opener, position: number): number {
    const behind = position + 1;
    const next = this.text.charCodeAt(behind);
    if (next === openParenthesis) {
      const end = this.resourceEnd(behind + 1);
      if (end >= 0) return end;
    } else if (next === openBracket) {
      const label = labelEnd(this.content, behind);
      if (label >= 0 && this.isDefined(behind + 1, label - 1)) return label;
      const isCollapsed = this.text.charCodeAt(behind + 1) === closeBracket;
      return isCollapsed && this.isLabel(opener, position) ? behind + 2 : -1;
    }
    return this.isLabel(opener, position) ? behind : -1;
  }

  private isLabel(opener: Opener, end: number): boolean {
    if (this.labels.size === 0 || nextBracket(this.text, opener.wordsStart) !== end) return false;
    return this.isDefined(opener.wordsStart, end);
  }

  private isDefined(start: number, end: number): boolean {
    return this.labels.size > 0 && this.labels.has(normalizedLabel(this.text.slice(start, end)));
  }

  /** Position behind a destination, a title if there is one, and the closing bracket, or -1. */
  private resourceEnd(position: number): number {
    const { text } = this;
    const start = skipWhitespace(text, position);
    if (text.charCodeAt(start) === closeParenthesis) return start + 1;
    const destination = destinationEnd(text, start, deepestParentheses);
    if (destination < 0) return -1;
    const title = skipWhitespace(text, destination);
    const closer = title > destination ? titleCloser(text.charCodeAt(title)) : 0;
    return closer === 0 ? this.closingEnd(title) : this.titledEnd(title + 1, closer);
  }

  private closingEnd(position: number): number {
    return this.text.charCodeAt(position) === closeParenthesis ? position + 1 : -1;
  }

  private titledEnd(position: number, closer: number): number {
    const known = this.titles.get(closer);
    // Every search that begins between an earlier one and what it found finds the same.
    if (known && position >= known.from && (known.end < 0 || position < known.end)) return known.resourceEnd;
    const end = titleEnd(this.text, position, closer);
    const resourceEnd = end < 0 ? -1 : this.closingEnd(skipWhitespace(this.text, end));
    this.titles.set(closer, { from: position, end, resourceEnd });
    return resourceEnd;
  }
}

/**
 * The code, HTML, links and images of a paragraph in the order of its text, each with those inside it.
 * @param from Where the paragraph begins in the content.
 * @param labels The labels that are defined in the note.
 */
export function inlineMarks(
  content: Content,
  from: number,
  labels: ReadonlySet<string>,
): readonly InlineMark[] {
  return new InlineReader(content, labels).read(from);
}
