import type { ListItem, Nodes, Paragraph, PhrasingContent } from 'mdast';
import { fromMarkdown } from 'mdast-util-from-markdown';
import { frontmatterFromMarkdown } from 'mdast-util-frontmatter';
import { gfmTaskListItemFromMarkdown } from 'mdast-util-gfm-task-list-item';
import { frontmatter } from 'micromark-extension-frontmatter';
import { gfmTaskListItem } from 'micromark-extension-gfm-task-list-item';
import type { TaskBox } from '../entries';
import type { Heading } from '../note-reading';
import type { SourceRange } from '../source-range';
import type { MarkdownReader, MarkdownReading, TextLine } from './markdown-reader';

const byteOrderMark = 0xfeff;
const lineEnding = /\r\n|\n|\r/g;

/** What surrounds a node on its way down from the root. */
interface Surroundings {
  readonly quotes: number;
  readonly item?: ListItem;
}

/** Where a node stands in `text`; every node of the reader has a position. */
function rangeOf(node: Nodes, shift: number): SourceRange {
  return {
    start: (node.position?.start.offset ?? 0) + shift,
    end: (node.position?.end.offset ?? 0) + shift,
  };
}

/** The words of a node and of all nodes below it. */
function wordsOf(node: Nodes): string {
  if ('value' in node) return node.type === 'html' ? '' : node.value;
  if ('alt' in node) return node.alt ?? '';
  return 'children' in node ? node.children.map(wordsOf).join('') : '';
}

/** Ranges in a paragraph that are not ordinary text, and among them those of HTML. */
function specialRanges(
  nodes: readonly PhrasingContent[],
  shift: number,
): { all: SourceRange[]; html: SourceRange[] } {
  const all: SourceRange[] = [];
  const html: SourceRange[] = [];
  const visit = (node: PhrasingContent) => {
    switch (node.type) {
      case 'html':
        html.push(rangeOf(node, shift));
        all.push(rangeOf(node, shift));
        break;
      case 'inlineCode':
      case 'link':
      case 'linkReference':
      case 'image':
      case 'imageReference':
        all.push(rangeOf(node, shift));
        break;
      default:
        if ('children' in node) node.children.forEach(visit);
    }
  };
  nodes.forEach(visit);
  return { all, html };
}

/** The box of a task list item, whose brackets stand between the item's marker and its first words. */
function taskBox(text: string, item: ListItem, wordsStart: number): TaskBox | undefined {
  if (typeof item.checked !== 'boolean') return undefined;
  const bracket = text.lastIndexOf(']', wordsStart - 1);
  return { checked: item.checked, range: { start: bracket - 1, end: bracket } };
}

/** Offset behind the indentation and at most `quotes` block quote marks. */
function skipContainers(text: string, start: number, end: number, quotes: number): number {
  let offset = start;
  let left = quotes;
  while (offset < end) {
    const character = text[offset];
    if (character === '>' && left > 0) left -= 1;
    else if (character !== ' ' && character !== '\t') break;
    offset += 1;
  }
  return offset;
}

/** Source lines of a range, line endings left out. */
function sourceLines(text: string, range: SourceRange): SourceRange[] {
  const lines: SourceRange[] = [];
  let start = range.start;
  for (const match of text.slice(range.start, range.end).matchAll(lineEnding)) {
    lines.push({ start, end: range.start + match.index });
    start = range.start + match.index + match[0].length;
  }
  lines.push({ start, end: range.end });
  return lines;
}

/** Where the text of a line ends: trailing blanks and a backslash that breaks the line are not part of it. */
function textEnd(text: string, line: SourceRange, isLast: boolean): number {
  let end = line.end;
  while (end > line.start && (text[end - 1] === ' ' || text[end - 1] === '\t')) end -= 1;
  if (isLast || text[end - 1] !== '\\' || end !== line.end) return end;
  end -= 1;
  while (end > line.start && (text[end - 1] === ' ' || text[end - 1] === '\t')) end -= 1;
  return end;
}

/** What a list item holds below the line that opens it. */
function linesBelow(text: string, line: SourceRange, itemEnd: number): SourceRange | undefined {
  lineEnding.lastIndex = line.end;
  const next = lineEnding.exec(text);
  lineEnding.lastIndex = 0;
  if (!next) return undefined;
  const start = next.index + next[0].length;
  return start < itemEnd ? { start, end: itemEnd } : undefined;
}

function paragraphLines(text: string, paragraph: Paragraph, around: Surroundings, shift: number): TextLine[] {
  const range = rangeOf(paragraph, shift);
  const special = specialRanges(paragraph.children, shift);
  const lines = sourceLines(text, range);
  const found: TextLine[] = [];
  lines.forEach((line, index) => {
    const start = skipContainers(text, line.start, line.end, index === 0 ? 0 : around.quotes);
    const opener = /^#\p{L}/u.test(text.slice(start, start + 3));
    if (!opener || special.all.some((one) => start >= one.start && start < one.end)) return;
    const own = { start, end: textEnd(text, { start, end: line.end }, index === lines.length - 1) };
    const hidden = special.html.filter((one) => one.start < own.end && one.end > own.start);
    const item = index === 0 && around.item?.children[0] === paragraph ? around.item : undefined;
    if (!item) {
      found.push({ range: own, hidden });
      return;
    }
    const itemRange = rangeOf(item, shift);
    const task = taskBox(text, item, start);
    const below = linesBelow(text, line, itemRange.end);
    found.push({
      range: own,
      hidden,
      item: { range: itemRange, ...(task ? { task } : {}), ...(below ? { below } : {}) },
    });
  });
  return found;
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
  const source = shift ? text.slice(1) : text;
  const opensWithYaml = frontMatterBlock.test(source);
  const tree = fromMarkdown(source, {
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
      headings.push({ depth: node.depth, range: rangeOf(node, shift), text: wordsOf(node).trim() });
    else if (node.type === 'paragraph') lines.push(...paragraphLines(text, node, around, shift));
    else if (node.type === 'blockquote')
      for (const child of node.children) visit(child, { quotes: around.quotes + 1 });
    else if (node.type === 'listItem')
      for (const child of node.children) visit(child, { quotes: around.quotes, item: node });
    else if ('children' in node) for (const child of node.children) visit(child, around);
  };
  visit(tree, { quotes: 0 });
  const reading: MarkdownReading = { headings, lines, ...(yaml ? { frontMatter: yaml } : {}) };
  return reading;
};
