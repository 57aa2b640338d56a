import type { Entry } from '../notation/entries';
import { scanLines } from '../notation/markdown/scan-lines';
import type { Heading, NoteReading } from '../notation/note-reading';
import { readNote } from '../notation/read-note';
import type { SourceRange } from '../notation/source-range';
import { applyTextEdits, type TextEdit } from '../notation/text-edit';
import { endOfLine, type LineEnding, lineEndingOf, linesOf, startOfLine } from './line-ending';

/** A place in a note at which lines can go in, and what has to stand around them there. */
interface Place {
  readonly offset: number;
  /** Whether the lines go behind a line (which keeps its own ending) or in front of one. */
  readonly side: 'behind' | 'before';
  /** What every new line begins with: the indentation of the list that it joins. */
  readonly indentation: string;
  /** An empty line between the new lines and what they stand beside. */
  readonly apart: boolean;
}

const openers = /^\s*(?:`{3,}|~{3,}|<)/;
const blankLine = /^[ \t]*$/;

/** The end of an entry with all that belongs to it: its list item, or its paragraph. */
function endOfEntry(text: string, entry: Entry): number {
  if (entry.body) return endOfLine(text, entry.body.range.end);
  let end = endOfLine(text, entry.range.end);
  if (entry.itemRange.start !== entry.range.start) return end;
  // A tag in a plain paragraph: the lines that follow it are still the same paragraph.
  for (;;) {
    const next = end + (text.startsWith('\r\n', end) ? 2 : 1);
    if (next >= text.length) return end;
    const nextEnd = endOfLine(text, next);
    if (blankLine.test(text.slice(next, nextEnd))) return end;
    end = nextEnd;
  }
}

/** The indentation in front of an entry's list marker, or `undefined` when something else stands there. */
function indentationOf(text: string, entry: Entry): string | undefined {
  const before = text.slice(startOfLine(text, entry.itemRange.start), entry.itemRange.start);
  return blankLine.test(before) ? before : undefined;
}

function placeAtEnd(text: string): Place {
  const lines = linesOf(text);
  const last = lines.filter((line) => !blankLine.test(line)).at(-1);
  const endsBlank = blankLine.test(lines[lines.length - 1] ?? '');
  // Behind a list or an empty line the new item needs no distance; behind a heading or a paragraph it does.
  const apart = last !== undefined && !endsBlank && !/^(?:\s|[-*+]\s|\d+[.)]\s)/.test(last);
  return { offset: text.length, side: 'behind', indentation: '', apart };
}

/** Places to try, the best first. A later one is needed when the end of the note is code or a comment. */
function* places(
  text: string,
  reading: NoteReading,
  behind: readonly ((entry: Entry) => boolean)[],
): Generator<Place> {
  for (const wanted of behind) {
    const last = reading.entries.filter(wanted).at(-1);
    const indentation = last && indentationOf(text, last);
    if (last && indentation !== undefined)
      yield { offset: endOfEntry(text, last), side: 'behind', indentation, apart: false };
  }
  yield placeAtEnd(text);
  let line = startOfLine(text, text.length);
  for (let tries = 0; tries < 8; line = startOfLine(text, Math.max(0, line - 1))) {
    if (openers.test(text.slice(line, endOfLine(text, line)))) {
      tries += 1;
      yield { offset: line, side: 'before', indentation: '', apart: true };
    }
    if (line === 0) break;
    if (text[line - 1] === '\n' && text[line - 2] === '\r') line -= 1;
  }
  const fence = reading.frontMatter ? endOfLine(text, reading.frontMatter.range.end) : undefined;
  if (fence !== undefined) {
    const closing = fence + (text.startsWith('\r\n', fence) ? 2 : 1);
    yield { offset: endOfLine(text, closing), side: 'behind', indentation: '', apart: true };
  } else {
    yield { offset: 0, side: 'before', indentation: '', apart: true };
  }
}

function editAt(text: string, place: Place, lines: readonly string[], ending: LineEnding): TextEdit {
  const own = lines.map((line) => (line === '' ? '' : place.indentation + line)).join(ending);
  const distance = place.apart ? ending : '';
  const range = { start: place.offset, end: place.offset };
  if (place.side === 'before') return { range, text: own + ending + distance };
  const behindLastEnding = place.offset === text.length && startOfLine(text, text.length) === text.length;
  return { range, text: behindLastEnding ? distance + own + ending : ending + distance + own };
}

/** What a reader of a note relies on: tags with their words, boxes and bodies, and headings. */
interface Portrait {
  readonly entries: readonly Entry[];
  readonly headings: readonly Heading[];
}

function portraitOf(text: string): Portrait {
  // Headings are asked of the Markdown reader itself, which the note reader spares in a text without tags.
  return { entries: readNote(text).entries, headings: scanLines(text).headings };
}

function within(portrait: Portrait, accepts: (part: { readonly range: SourceRange }) => boolean): Portrait {
  return { entries: portrait.entries.filter(accepts), headings: portrait.headings.filter(accepts) };
}

function inWords(text: string, portrait: Portrait, bodies: boolean): string {
  const entries = portrait.entries.map((entry) => [
    entry.tag,
    text.slice(entry.range.start, entry.range.end),
    entry.task?.checked ?? null,
    bodies && entry.body ? text.slice(entry.body.range.start, entry.body.range.end) : null,
  ]);
  return JSON.stringify([entries, portrait.headings.map((heading) => [heading.depth, heading.text])]);
}

/**
 * Whether the note reads as before, with exactly what the new lines say added.
 * @param nested Whether the lines join the body of an entry.
 */
export function onlyAdds(text: string, edit: TextEdit, lines: string, nested = false): boolean {
  const after = applyTextEdits(text, [edit]);
  const end = edit.range.start + edit.text.length;
  const isNew = ({ range }: { readonly range: SourceRange }) =>
    range.start >= edit.range.start && range.start < end;
  const portrait = portraitOf(after);
  const old = within(portrait, (part) => !isNew(part));
  const added = within(portrait, isNew);
  return (
    inWords(after, old, !nested) === inWords(text, portraitOf(text), !nested) &&
    inWords(after, added, false) === inWords(lines, portraitOf(lines), false)
  );
}

/**
 * The edit that adds Markdown blocks to a note and changes nothing else: the line ending is the note's own, and
 * a note without a final line ending stays without one. The lines go behind the last entry that `behind`
 * accepts (its first condition that any entry meets), otherwise to the end of the note; where that is code,
 * HTML or a comment, in front of it.
 * @param blocks Each a list item or a heading with what follows it, beginning in the first column.
 * @param behind Conditions, the most wanted first.
 * @returns `undefined` when there is no place at which the lines would be read as what they are.
 */
export function insertLines(
  text: string,
  blocks: readonly string[],
  behind: readonly ((entry: Entry) => boolean)[],
): TextEdit | undefined {
  const lines = blocks.flatMap(linesOf);
  const ending = lineEndingOf(text) ?? '\n';
  const reading = readNote(text);
  for (const place of places(text, reading, behind)) {
    const edit = editAt(text, place, lines, ending);
    if (onlyAdds(text, edit, lines.join('\n'), place.indentation !== '')) return edit;
  }
  return undefined;
}
