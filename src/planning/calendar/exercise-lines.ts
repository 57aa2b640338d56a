import type { ListItem, Nodes, PhrasingContent } from 'mdast';
import { fromMarkdown } from 'mdast-util-from-markdown';
import { gfmTaskListItemFromMarkdown } from 'mdast-util-gfm-task-list-item';
import { gfmTaskListItem } from 'micromark-extension-gfm-task-list-item';
import type { EntryBase } from '../../notation/entries';
import { itemText } from '../session-block';

const pictureEnding = /\.(?:jpe?g|png|gif|webp|heic|heif|avif|mp4|mov)\b/gi;

/** A line that begins as a tag does, known or not: it logs or plans something and is nobody's exercise. */
const tagLike = /^\s*#\p{L}/u;

/** A tag's name anywhere in a line; what stands around it was meant for the journal alone. */
const privateTag = /#(?:why|pain|sore|measure|win)\b/iu;

/** Free words behind a dash are a remark, as they are behind a tag. */
const remarkStart = /(?:^|\s)(?:--|—)(?=\s|$)/u;

function withoutRemark(line: string): string {
  const start = line.search(remarkStart);
  return start < 0 ? line : line.slice(0, start);
}

/** The name of a picture or film begins with its word, and ends with its ending. */
function withoutPictureFiles(line: string): string {
  return line.replace(/\S+/gu, (word) => {
    const last = [...word.matchAll(pictureEnding)].at(-1);
    return last && last.index > 0 ? word.slice(last.index + last[0].length) : word;
  });
}

function wordsOf(nodes: readonly PhrasingContent[]): string {
  return nodes
    .map((node) => {
      switch (node.type) {
        case 'html':
        case 'image':
        case 'imageReference':
          return '';
        case 'break':
          return '\n';
        case 'link':
          return withoutPictureFiles(node.url) !== node.url ? '' : wordsOf(node.children);
        default:
          if ('children' in node) return wordsOf(node.children);
          return 'value' in node ? node.value : '';
      }
    })
    .join('');
}

/** The lines of a paragraph that may be shown; what stands behind a tag in it may be the tag's. */
function shownLines(text: string): readonly string[] {
  const lines = text.split('\n');
  const tag = lines.findIndex((line) => tagLike.test(line));
  return (tag < 0 ? lines : lines.slice(0, tag))
    .filter((line) => !privateTag.test(line))
    .map((line) => withoutPictureFiles(withoutRemark(line)).replace(/\s+/gu, ' ').trim())
    .filter((line) => line !== '');
}

function beginsWithTag({ children }: ListItem): boolean {
  const [first] = children;
  return first?.type === 'paragraph' && tagLike.test(wordsOf(first.children));
}

function itemLines(item: ListItem, marker: string, indentation: string): readonly string[] {
  if (beginsWithTag(item)) return [];
  const [first, ...others] = item.children;
  const own = first?.type === 'paragraph' ? shownLines(wordsOf(first.children)) : [];
  const rest = first?.type === 'paragraph' ? others : item.children;
  return [
    ...own.map((line, index) => `${indentation}${index === 0 ? marker : ' '.repeat(marker.length)}${line}`),
    ...rest.flatMap((block) => blockLines(block, own.length === 0 ? indentation : `${indentation}  `)),
  ];
}

function blockLines(block: Nodes, indentation: string): readonly string[] {
  switch (block.type) {
    case 'list':
      return block.children.flatMap((item, index) =>
        itemLines(item, block.ordered ? `${(block.start ?? 1) + index}. ` : '- ', indentation),
      );
    case 'paragraph':
    case 'heading':
      return shownLines(wordsOf(block.children)).map((line) => indentation + line);
    case 'code':
      return shownLines(block.value).map((line) => indentation + line);
    case 'blockquote':
      return block.children.flatMap((child) => blockLines(child, indentation));
    default:
      return [];
  }
}

/**
 * What is nested under a session or a routine, as lines of plain text for others to read: the exercises. Tags with
 * all that is nested under them, remarks, comments and pictures are left out.
 * @param text the note in which the entry stands
 */
export function exerciseLines(text: string, entry: EntryBase): readonly string[] {
  if (!entry.body) return [];
  const tree = fromMarkdown(itemText(text, entry, '- item'), {
    extensions: [gfmTaskListItem()],
    mdastExtensions: [gfmTaskListItemFromMarkdown()],
  });
  const [list] = tree.children;
  if (list?.type !== 'list') return [];
  const [item] = list.children;
  const [first, ...others] = item?.children ?? [];
  if (first?.type !== 'paragraph') return [];
  // Words without a list stand in one paragraph with the item's own line.
  const own = wordsOf(first.children).split('\n').slice(1).join('\n');
  return [...shownLines(own), ...others.flatMap((block) => blockLines(block, ''))];
}
