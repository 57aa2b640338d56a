import type { EntryBase, SessionEntry } from '../notation/entries';
import { readNote } from '../notation/read-note';
import { applyTextEdits, type TextEdit } from '../notation/text-edit';
import { linesOf, startOfLine } from './line-ending';
import { mergeEdits } from './merge-edits';

/**
 * A session's line with its body as a text of its own: the list marker in the first column, lines ended by LF,
 * the indentation of the body relative to the marker as it was.
 */
export interface SessionBlock {
  readonly text: string;
  /** The session as it reads in `text`. */
  readonly entry: SessionEntry;
}

const marker = /^[-*+][ \t]/;

/** The text of an entry's item from its first column on, with LF; the item's own indentation is taken off. */
export function itemText(text: string, entry: EntryBase, first: string): string {
  const indentation = text.slice(startOfLine(text, entry.itemRange.start), entry.itemRange.start);
  const body = entry.body ? linesOf(text.slice(entry.body.range.start, entry.body.range.end)) : [];
  const lines = body.map((line) => (line.startsWith(indentation) ? line.slice(indentation.length) : line));
  while (/^[ \t]*$/.test(lines.at(-1) ?? 'x')) lines.pop();
  return [first, ...lines].join('\n');
}

/**
 * An item's text without the tags nested in it: what was logged or defined there stays where it was written.
 * @param from Where the item's own first line ends.
 */
function withoutNestedTags(text: string, from: number): string {
  const cuts: TextEdit[] = [];
  let end = from;
  for (const entry of readNote(text).entries) {
    if (entry.range.start < end) continue;
    const last = Math.max(entry.range.end, entry.body?.range.end ?? 0);
    const lineEnd = text.indexOf('\n', last);
    // With the line ending in front of it, so that no empty line is left.
    const range = {
      start: startOfLine(text, entry.itemRange.start) - 1,
      end: lineEnd < 0 ? text.length : lineEnd,
    };
    cuts.push({ range, text: '' });
    end = range.end;
  }
  return applyTextEdits(text, cuts);
}

/** The lines nested under a tag, ready to stand under another list item; tags among them are left out. */
export function bodyUnder(text: string, entry: EntryBase): string {
  const first = '- item';
  return withoutNestedTags(itemText(text, entry, first), first.length).slice(first.length);
}

/**
 * A copy of a session's line and body, to be written into another note. Tags in the body are left out: a reading
 * or a pain belongs to the day on which it was written. A session outside of a list becomes a list item.
 */
export function sessionBlock(text: string, entry: SessionEntry): SessionBlock | undefined {
  const written = text.slice(entry.itemRange.start, entry.range.end);
  const first = marker.test(written) ? written : `- ${text.slice(itemWordsStart(entry), entry.range.end)}`;
  const block = withoutNestedTags(itemText(text, entry, first), first.length);
  const copy = readNote(block).entries[0];
  return copy?.tag === 'session' ? { text: block, entry: copy } : undefined;
}

/** Where the words of an item begin: at its task box, or at its tag. */
function itemWordsStart(entry: EntryBase): number {
  return entry.task ? entry.task.range.start - 1 : entry.range.start;
}

/** The block with an edit made in its first line, read again. */
export function editBlock(
  block: SessionBlock,
  change: (text: string, entry: SessionEntry) => readonly TextEdit[],
): SessionBlock {
  const text = applyTextEdits(block.text, mergeEdits(change(block.text, block.entry), []));
  const entry = readNote(text).entries[0];
  return entry?.tag === 'session' ? { text, entry } : block;
}
