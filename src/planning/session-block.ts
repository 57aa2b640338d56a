import type { Entry, EntryBase, SessionEntry } from '../notation/entries';
import { readNote } from '../notation/read-note';
import type { SourceRange } from '../notation/source-range';
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

/** The lines of a list item's body with the item's own indentation taken off. */
function bodyLines(text: string, entry: EntryBase, indentation: string): readonly string[] {
  if (!entry.body) return [];
  return linesOf(text.slice(entry.body.range.start, entry.body.range.end)).map((line) =>
    line.startsWith(indentation) ? line.slice(indentation.length) : line,
  );
}

/** The text with the items of nested tags taken out: what was logged or defined there stays where it was written. */
function withoutNestedTags(text: string, entries: readonly Entry[], from: number): string {
  const cuts: TextEdit[] = [];
  let end = from;
  for (const entry of entries) {
    if (entry.range.start < from || entry.range.start < end) continue;
    const last = Math.max(entry.range.end, entry.body?.range.end ?? 0);
    const lineEnd = text.indexOf('\n', last);
    const range: SourceRange = {
      // With the line ending in front of it, so that no empty line is left.
      start: startOfLine(text, entry.itemRange.start) - 1,
      end: lineEnd < 0 ? text.length : lineEnd,
    };
    cuts.push({ range, text: '' });
    end = range.end;
  }
  return applyTextEdits(text, cuts);
}

/**
 * A copy of a session's line and body, to be written into another note. Tags in the body are left out: a reading
 * or a pain belongs to the day on which it was written. A session outside of a list becomes a list item.
 */
export function sessionBlock(text: string, entry: SessionEntry): SessionBlock | undefined {
  const lineStart = startOfLine(text, entry.itemRange.start);
  const written = text.slice(entry.itemRange.start, entry.range.end);
  const first = marker.test(written) ? written : `- ${text.slice(itemWordsStart(entry), entry.range.end)}`;
  const block = [first, ...bodyLines(text, entry, text.slice(lineStart, entry.itemRange.start))].join('\n');
  const nested = readNote(block).entries.slice(1);
  const own = withoutNestedTags(block, nested, first.length);
  const copy = readNote(own).entries[0];
  return copy?.tag === 'session' ? { text: own, entry: copy } : undefined;
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
