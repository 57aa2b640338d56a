import type { MarkdownReader } from './markdown-reader';
import { BlockScanner } from './scanner/block-scanner';
import { frontMatterBlock } from './scanner/front-matter-block';

const byteOrderMark = 0xfeff;

/**
 * The reading of CommonMark 0.31.2 with GFM task list items and YAML front matter, without a syntax tree: the same as
 * the tree's (`readMarkdownTree`) on every text, in steps in proportion to its length.
 */
export const scanLines: MarkdownReader = (text) => {
  // CommonMark 0.31.2, section 2.3: a NUL is read as U+FFFD. Both are one unit long, so offsets stay.
  const note = text.includes('\0') ? text.replaceAll('\0', '\ufffd') : text;
  const start = note.charCodeAt(0) === byteOrderMark ? 1 : 0;
  const front = frontMatterBlock(note, start);
  const blocks = new BlockScanner(note);
  blocks.scan(front?.behind ?? start);
  return {
    ...(front ? { frontMatter: front.yaml } : {}),
    headings: blocks.headings.finish(blocks.labels),
    lines: blocks.lines.finish(blocks.labels),
  };
};
