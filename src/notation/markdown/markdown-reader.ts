import type { TaskBox } from '../entries';
import type { Heading } from '../note-reading';
import type { SourceRange } from '../source-range';

/** A source line of ordinary Markdown text: not code, HTML, a comment, a heading, or inside a link or image. */
export interface TextLine {
  /** From the first character after indentation, list marker and task box to the last before the line ending. */
  readonly range: SourceRange;
  /** Inline HTML and comments on the line: the notation reads them as blanks. */
  readonly hidden: readonly SourceRange[];
  /** The list item that the line opens. */
  readonly item?: {
    /** From the list marker to the end of the item. */
    readonly range: SourceRange;
    readonly task?: TaskBox;
    /** The lines of the item below this one, when there are any. */
    readonly below?: SourceRange;
  };
}

/** What the notation needs to know about a note's Markdown. */
export interface MarkdownReading {
  /** The YAML between the fences of the front matter. */
  readonly frontMatter?: SourceRange;
  readonly headings: readonly Heading[];
  /** Only the lines whose text begins with `#` and a letter: the others cannot hold a tag. */
  readonly lines: readonly TextLine[];
}

/** Decides which lines of a note are ordinary text. Any text is valid input; nothing is thrown. */
export type MarkdownReader = (text: string) => MarkdownReading;
