import type { ListItem, Nodes, Paragraph, PhrasingContent, Text } from 'mdast';
import type { TaskBox } from '../entries';
import type { SourceRange } from '../source-range';
import type { TextLine } from './markdown-reader';

const lineEnding = /\r\n|\n|\r/g;

/** What surrounds a paragraph. */
export interface Surroundings {
  /** The block quotes around it. */
  readonly quotes: number;
  /** The list item that it stands directly in, with its range in the text. */
  readonly item?: ListItem;
  readonly itemRange?: SourceRange;
}

/** Where a node stands in `text`; every node of the reader has a position. */
export function rangeOf(node: Nodes, shift: number): SourceRange {
  return {
    start: (node.position?.start.offset ?? 0) + shift,
    end: (node.position?.end.offset ?? 0) + shift,
  };
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

/** What the parser took for a task box, with the blanks and the line ending that it left out behind it. */
const brackets = /\[([ \txX]|(?:\r\n|\n|\r)[ \t>]*)\][ \t\r\n]*$/;

/**
 * The paragraph's words, and the task box before them. The parser also takes brackets around a line ending for a box,
 * and boxes of paragraphs that are not an item's first; those are words here.
 */
function wordsAndBox(
  text: string,
  paragraph: Paragraph,
  { item }: Surroundings,
  shift: number,
): { words: SourceRange; box?: TaskBox } {
  const words = rangeOf(paragraph, shift);
  if (typeof item?.checked !== 'boolean') return { words };
  if (item.children.find((child) => child.type === 'paragraph') !== paragraph) return { words };
  const behind = text[words.start] === '[' ? words.start + 3 : words.start;
  const found = brackets.exec(text.slice(rangeOf(item, shift).start, behind));
  if (!found) return { words };
  const start = rangeOf(item, shift).start + found.index;
  const isFirst = item.children.find((child) => child.type !== 'definition') === paragraph;
  if (!isFirst || found[1]?.length !== 1 || /[\r\n]/.test(found[1]))
    return { words: { start, end: words.end } };
  return {
    words: { start: start + 3, end: words.end },
    box: { checked: item.checked, range: { start: start + 1, end: start + 2 } },
  };
}

/** Offset behind the indentation and at most `quotes` block quote marks. */
export function skipContainers(text: string, start: number, end: number, quotes: number): number {
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
export function sourceLines(text: string, range: SourceRange): SourceRange[] {
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

/** Whether a line begins with `>` behind four blanks among its marks, or has one behind a tab. */
function isIndentedQuote(before: string): boolean {
  const marks = /^[ \t>]*/.exec(before)?.[0].split('>') ?? [];
  return marks.slice(0, -1).some((blanks) => blanks.includes('    ')) || /\t *>/.test(before);
}

/**
 * Whether `>` before `start` is a word of its line and no mark: a line that continues a paragraph without the marks of
 * its quotes may begin with one behind four columns of blanks.
 */
function beginsWithQuoteMark(
  text: string,
  paragraph: Paragraph,
  line: SourceRange,
  start: number,
  shift: number,
): boolean {
  if (!isIndentedQuote(text.slice(line.start, start))) return false;
  const node = textAt(paragraph.children, start - shift);
  if (!node) return false;
  const before = text.slice((node.position?.start.offset ?? 0) + shift, line.start);
  return /^>/.test(node.value.split(lineEnding)[[...before.matchAll(lineEnding)].length] ?? '');
}

function textAt(nodes: readonly Nodes[], offset: number): Text | undefined {
  const node = nodes.find((one) => {
    const { start, end } = rangeOf(one, 0);
    return start <= offset && offset < end;
  });
  if (node?.type === 'text') return node;
  return node && 'children' in node ? textAt(node.children, offset) : undefined;
}

/** The lines of a paragraph that may hold a tag and are ordinary text. */
export function paragraphLines(
  text: string,
  paragraph: Paragraph,
  around: Surroundings,
  shift: number,
): TextLine[] {
  const { words, box } = wordsAndBox(text, paragraph, around, shift);
  const special = specialRanges(paragraph.children, shift);
  const lines = sourceLines(text, words);
  const found: TextLine[] = [];
  let isFirst = true;
  lines.forEach((line, index) => {
    const start = skipContainers(text, line.start, line.end, index === 0 ? 0 : around.quotes);
    // Behind a task box the words may begin on the next line.
    if (isFirst && start === line.end) return;
    const opensItem = isFirst && around.item?.children[0] === paragraph;
    isFirst = false;
    const opener = /^#\p{L}/u.test(text.slice(start, start + 3));
    // What begins earlier and reaches into the line ends behind its first word.
    if (!opener || special.all.some((one) => one.start <= start && one.end > line.start)) return;
    if (beginsWithQuoteMark(text, paragraph, line, start, shift)) return;
    const own = { start, end: textEnd(text, { start, end: line.end }, index === lines.length - 1) };
    const hidden = special.html.filter((one) => one.start < own.end && one.end > own.start);
    if (!opensItem || !around.itemRange) {
      found.push({ range: own, hidden });
      return;
    }
    const below = linesBelow(text, line, around.itemRange.end);
    found.push({
      range: own,
      hidden,
      item: { range: around.itemRange, ...(box ? { task: box } : {}), ...(below ? { below } : {}) },
    });
  });
  return found;
}
