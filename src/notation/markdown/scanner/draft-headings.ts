import type { Heading } from '../../note-reading';
import type { SourceRange } from '../../source-range';
import type { Content } from './content';
import { wordsBetween } from './heading-words';
import { inlineMarks } from './inline-marks';

/** A heading before all labels are known. */
interface DraftHeading {
  readonly depth: number;
  readonly range: SourceRange;
  readonly content: Content;
  /** Position in the content at which the heading's words begin. */
  readonly from: number;
}

const mayNotBePlain = /[\\`*_[<&\n]/;

/** The words of a heading; lines and their breaks become single line feeds. */
function headingText({ content, from }: DraftHeading, labels: ReadonlySet<string>): string {
  const { text } = content;
  if (!mayNotBePlain.test(text)) return text.slice(from).trim();
  const marks = inlineMarks(content, from, labels);
  return wordsBetween(text, from, text.length, marks).replace(/\r\n?/g, '\n').trim();
}

/** Collects headings; their words are read when all labels are known. */
export class DraftHeadings {
  private readonly headings: DraftHeading[] = [];

  add(depth: number, range: SourceRange, content: Content, from = 0): void {
    this.headings.push({ depth, range, content, from });
  }

  finish(labels: ReadonlySet<string>): Heading[] {
    return this.headings.map((heading) => ({
      depth: heading.depth,
      range: heading.range,
      text: headingText(heading, labels),
    }));
  }
}
