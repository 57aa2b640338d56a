import type { ListItem, Nodes } from 'mdast';
import { fromMarkdown } from 'mdast-util-from-markdown';
import { frontmatterFromMarkdown } from 'mdast-util-frontmatter';
import { gfmTaskListItemFromMarkdown } from 'mdast-util-gfm-task-list-item';
import { frontmatter } from 'micromark-extension-frontmatter';
import { gfmTaskListItem } from 'micromark-extension-gfm-task-list-item';
import type { Heading } from '../note-reading';
import type { SourceRange } from '../source-range';
import type { MarkdownReader, MarkdownReading, TextLine } from './markdown-reader';
import { paragraphLines, rangeOf, type Surroundings, skipContainers, sourceLines } from './mdast-lines';

const byteOrderMark = 0xfeff;

/** The words of a node and of all nodes below it. */
function wordsOf(node: Nodes): string {
  if ('value' in node) return node.type === 'html' ? '' : node.value;
  if ('alt' in node) return node.alt ?? '';
  return 'children' in node ? node.children.map(wordsOf).join('') : '';
}

/** End of the line in which `offset` stands, its ending left out. */
function endOfLine(text: string, offset: number): number {
  const length = text.slice(offset).search(/[\r\n]/);
  return length < 0 ? text.length : offset + length;
}

/** End of the last line of a block that has more than blanks and quote marks, if there is one. */
function wordsEnd(text: string, node: Nodes, quotes: number, shift: number): number | undefined {
  const range = rangeOf(node, shift);
  switch (node.type) {
    case 'blockquote':
      return lastWordsEnd(text, node.children, quotes + 1, shift);
    case 'list':
      return lastWordsEnd(text, node.children, quotes, shift);
    case 'listItem':
      return lastWordsEnd(text, node.children, quotes, shift) ?? endOfLine(text, range.start);
    case 'code':
    case 'html':
      // Without an end of their own these run through blank lines into the marks of the line below.
      return sourceLines(text, range)
        .filter((line) => skipContainers(text, line.start, line.end, quotes) < line.end)
        .at(-1)?.end;
    default:
      return endOfLine(text, range.end);
  }
}

function lastWordsEnd(
  text: string,
  nodes: readonly Nodes[],
  quotes: number,
  shift: number,
): number | undefined {
  for (const node of [...nodes].reverse()) {
    const end = wordsEnd(text, node, quotes, shift);
    if (end !== undefined) return end;
  }
  return undefined;
}

/** Where an item stands: up to the end of its last line that has more than blanks and quote marks. */
function itemRange(text: string, item: ListItem, quotes: number, shift: number): SourceRange {
  const { start, end } = rangeOf(item, shift);
  return { start, end: wordsEnd(text, item, quotes, shift) ?? end };
}

/** The words of a heading; lines and their breaks become single line feeds. */
function headingText(node: Nodes): string {
  return wordsOf(node).replace(/\r\n?/g, '\n').trim();
}

/** The YAML between the fences. */
function yamlBetweenFences(text: string, block: SourceRange): SourceRange {
  const lines = sourceLines(text, block);
  const first = lines[1];
  const last = lines[lines.length - 2];
  return first && last && lines.length > 2
    ? { start: first.start, end: last.end }
    : { start: block.end, end: block.end };
}

/**
 * Front matter with both its fences. The parser's extension is only asked where it stands: in a text that opens with
 * `---` and has no second fence it would leave every list and quotation unread.
 */
const frontMatterBlock = /^---[ \t]*(?:\r\n|\n|\r)(?:[\s\S]*?(?:\r\n|\n|\r))??---[ \t]*(?:\r\n|\n|\r|$)/;

/**
 * The reading of CommonMark 0.31.2 with GFM task list items and YAML front matter: the truth about which lines
 * are ordinary text. About one millisecond a note, so texts that cannot hold a tag are better not given to it.
 */
export const readMarkdownTree: MarkdownReader = (text) => {
  const shift = text.charCodeAt(0) === byteOrderMark ? 1 : 0;
  const opensWithYaml = frontMatterBlock.test(shift ? text.slice(1) : text);
  // The parser leaves one byte order mark out of its count.
  const tree = fromMarkdown(text, {
    extensions: [gfmTaskListItem(), ...(opensWithYaml ? [frontmatter(['yaml'])] : [])],
    mdastExtensions: [
      gfmTaskListItemFromMarkdown(),
      ...(opensWithYaml ? [frontmatterFromMarkdown(['yaml'])] : []),
    ],
  });
  const headings: Heading[] = [];
  const lines: TextLine[] = [];
  let yaml: SourceRange | undefined;
  const visit = (node: Nodes, around: Surroundings) => {
    if (node.type === 'yaml') yaml = yamlBetweenFences(text, rangeOf(node, shift));
    else if (node.type === 'heading')
      headings.push({ depth: node.depth, range: rangeOf(node, shift), text: headingText(node) });
    else if (node.type === 'paragraph') lines.push(...paragraphLines(text, node, around, shift));
    else if (node.type === 'blockquote')
      for (const child of node.children) visit(child, { quotes: around.quotes + 1 });
    else if (node.type === 'listItem') {
      const { quotes } = around;
      const inItem = { quotes, item: node, itemRange: itemRange(text, node, quotes, shift) };
      for (const child of node.children) visit(child, inItem);
    } else if ('children' in node) for (const child of node.children) visit(child, around);
  };
  visit(tree, { quotes: 0 });
  const reading: MarkdownReading = { headings, lines, ...(yaml ? { frontMatter: yaml } : {}) };
  return reading;
};
