import type { TaskBox } from '../../entries';
import type { SourceRange } from '../../source-range';
import type { TextLine } from '../markdown-reader';
import { backslash, closeBracket, hash, isBlank, isLetter, openBracket } from './characters';
import type { ItemDraft } from './containers';
import type { Content } from './content';
import { type InlineMark, inlineMarks } from './inline-marks';
import type { LineEndings } from './line-endings';

/** A line that begins with `#` and a letter, before all of the note is read. */
interface DraftLine {
  readonly range: SourceRange;
  readonly item?: ItemDraft;
  readonly task?: TaskBox;
  /** Where the next source line begins. */
  readonly nextLine: number;
}

/** Lines of one paragraph. */
interface DraftParagraph {
  readonly lines: readonly DraftLine[];
  /** The paragraph, when it may hold code, HTML or links, and the position at which they may begin. */
  readonly content?: Content;
  readonly from: number;
}

/** The paragraph's place: the item whose first block it is, and whether a task box may open it. */
export interface ParagraphPlace {
  readonly item: ItemDraft | undefined;
  readonly mayHaveBox: boolean;
}

/** A task box at the head of a paragraph. */
interface Box {
  readonly task: TaskBox;
  /** Position behind the closing bracket. */
  readonly end: number;
}

/** CommonMark and GFM's marks in which a line may begin that is no ordinary text. */
const mayHoldMarks = /[`<[]/;

function beginsTag(note: string, offset: number): boolean {
  if (note.charCodeAt(offset) !== hash) return false;
  return isLetter(note.charCodeAt(offset + 1)) || /^\p{L}/u.test(note.slice(offset + 1, offset + 3));
}

/** The end of a line's words: blanks, and on all but a paragraph's last line a backslash that breaks it, are no part. */
function wordsEnd(note: string, start: number, end: number, isLast: boolean): number {
  let last = end;
  while (last > start && isBlank(note.charCodeAt(last - 1))) last -= 1;
  if (isLast || last !== end || note.charCodeAt(last - 1) !== backslash) return last;
  last -= 1;
  while (last > start && isBlank(note.charCodeAt(last - 1))) last -= 1;
  return last;
}

/** GFM 0.29, section 5.3: brackets around a blank, `x` or `X`, then a blank or a line ending, then words. */
function taskBox(content: Content, position: number): Box | undefined {
  const { text } = content;
  if (text.charCodeAt(position) !== openBracket || text.charCodeAt(position + 2) !== closeBracket)
    return undefined;
  const value = text[position + 1] ?? '';
  if (!/[ \txX]/.test(value)) return undefined;
  if (value === '\t' && content.tabWidth(position + 1) !== 1) return undefined;
  const end = position + 3;
  if (!/^[ \t\n]/.test(text.slice(end, end + 1)) || /^[ \t]*$/.test(text.slice(end))) return undefined;
  const start = content.offsetOf(position + 1);
  return { task: { checked: value === 'x' || value === 'X', range: { start, end: start + 1 } }, end };
}

/** Collects the lines that may hold tags; which of them are ordinary text is decided when all labels are known. */
export class DraftLines {
  private readonly paragraphs: DraftParagraph[] = [];

  constructor(
    private readonly note: string,
    private readonly endings: LineEndings,
  ) {}

  /** @param from Position in the content at which the paragraph begins. */
  addParagraph(content: Content, from: number, place: ParagraphPlace): void {
    const { note } = this;
    const first = from === 0 ? 0 : content.lineOf(from);
    const box =
      place.mayHaveBox && note.charCodeAt(content.offsetOf(from)) === openBracket
        ? taskBox(content, from)
        : undefined;
    const lines: DraftLine[] = [];
    let isFirst = true;
    for (let index = first; index < content.lineCount; index += 1) {
      const line = content.line(index);
      if (!line) break;
      let start = index === first && box ? content.offsetOf(box.end) : line.start;
      while (start < line.end && isBlank(note.charCodeAt(start))) start += 1;
      // Behind a box the words may begin on the next line.
      if (isFirst && start === line.end) continue;
      if (beginsTag(note, start)) {
        const isLast = index === content.lineCount - 1;
        lines.push({
          range: { start, end: wordsEnd(note, start, line.end, isLast) },
          nextLine: this.endings.behind(line.end),
          ...(isFirst && place.item ? { item: place.item, ...(box ? { task: box.task } : {}) } : {}),
        });
      }
      isFirst = false;
    }
    const last = lines.at(-1);
    if (!last) return;
    const hasMarks = mayHoldMarks.test(note.slice(content.start, last.range.end));
    this.paragraphs.push({ lines, from: box?.end ?? from, ...(hasMarks ? { content } : {}) });
  }

  /** The lines that are ordinary text. */
  finish(labels: ReadonlySet<string>): TextLine[] {
    return this.paragraphs.flatMap(({ lines, content, from }) => {
      if (!content) return lines.map((line) => textLine(line, []));
      return ordinaryLines(content, lines, inlineMarks(content, from, labels));
    });
  }
}

/** The lines that begin in no mark, with the HTML that begins on them. */
function ordinaryLines(
  content: Content,
  lines: readonly DraftLine[],
  marks: readonly InlineMark[],
): TextLine[] {
  const found: TextLine[] = [];
  let next = 0;
  let behind = -1;
  for (const line of lines) {
    for (let mark = marks[next]; mark; mark = marks[next]) {
      if (content.offsetOf(mark.start) >= line.range.start) break;
      behind = content.offsetOf(mark.end - 1) + 1;
      next += 1;
    }
    if (behind > line.range.start) continue;
    const hidden: SourceRange[] = [];
    for (let index = next; index < marks.length; index += 1) {
      const mark = marks[index];
      if (!mark) break;
      const start = content.offsetOf(mark.start);
      if (start >= line.range.end) break;
      if (mark.kind === 'html') hidden.push({ start, end: content.offsetOf(mark.end - 1) + 1 });
    }
    found.push(textLine(line, hidden));
  }
  return found;
}

function textLine({ range, item, task, nextLine }: DraftLine, hidden: readonly SourceRange[]): TextLine {
  if (!item) return { range, hidden };
  return {
    range,
    hidden,
    item: {
      range: { start: item.start, end: item.end },
      ...(task ? { task } : {}),
      ...(nextLine < item.end ? { below: { start: nextLine, end: item.end } } : {}),
    },
  };
}
