import type { TaskBox } from '../../entries';
import type { SourceRange } from '../../source-range';
import type { TextLine } from '../markdown-reader';
import { backslash, closeBracket, hash, isBlank, isLetter, openBracket, tab } from './characters';
import type { ItemDraft } from './containers';
import type { Content } from './content';
import { type InlineMark, inlineMarks } from './inline-marks';
import type { LineEndings } from './line-endings';

type Mutable<Value> = { -readonly [Key in keyof Value]: Value[Key] };

const lowerX = 0x78;
const upperX = 0x58;

/** A line that begins with `#` and a letter, before all of the note is read. */
interface DraftLine {
  readonly start: number;
  readonly end: number;
  readonly item: ItemDraft | undefined;
  readonly task: TaskBox | undefined;
  /** Where the next source line begins. */
  readonly nextLine: number;
  /** Its paragraph, when that may hold code, HTML or links, and the position at which they may begin. */
  content: Content | undefined;
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
  /** Offset and position behind the closing bracket. */
  readonly behind: number;
  readonly position: number;
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
function taskBox(note: string, content: Content, position: number): Box | undefined {
  const start = content.offsetOf(position);
  const index = content.lineOf(position);
  const end = content.lineEnd(index);
  const value = note.charCodeAt(start + 1);
  const behind = start + 3;
  if (note.charCodeAt(start) !== openBracket || note.charCodeAt(start + 2) !== closeBracket) return undefined;
  if (behind > end || !(isBlank(value) || value === lowerX || value === upperX)) return undefined;
  if (value === tab && content.tabWidth(position + 1) !== 1) return undefined;
  let words = behind;
  while (words < end && isBlank(note.charCodeAt(words))) words += 1;
  // A line that goes on behind the box without a blank makes it brackets; below a blank rest must come more lines.
  if (words === end ? index === content.lineCount - 1 : words === behind) return undefined;
  return {
    task: { checked: !isBlank(value), range: { start: start + 1, end: start + 2 } },
    behind,
    position: position + 3,
  };
}

/** Collects the lines that may hold tags; which of them are ordinary text is decided when all labels are known. */
export class DraftLines {
  private readonly drafts: DraftLine[] = [];

  constructor(
    private readonly note: string,
    private readonly endings: LineEndings,
  ) {}

  /** @param from Position in the content at which the paragraph begins. */
  addParagraph(content: Content, from: number, place: ParagraphPlace): void {
    const { note } = this;
    const first = from === 0 ? 0 : content.lineOf(from);
    const box = place.mayHaveBox ? taskBox(note, content, from) : undefined;
    const before = this.drafts.length;
    let isFirst = true;
    for (let index = first; index < content.lineCount; index += 1) {
      const end = content.lineEnd(index);
      let start = index === first && box ? box.behind : content.lineStart(index);
      while (start < end && isBlank(note.charCodeAt(start))) start += 1;
      // Behind a box the words may begin on the next line.
      if (isFirst && start === end) continue;
      if (beginsTag(note, start))
        this.drafts.push({
          start,
          end: wordsEnd(note, start, end, index === content.lineCount - 1),
          nextLine: this.endings.behind(end),
          item: isFirst ? place.item : undefined,
          task: isFirst ? box?.task : undefined,
          content: undefined,
          from: box?.position ?? from,
        });
      isFirst = false;
    }
    if (this.drafts.length === before) return;
    const words = box?.behind ?? content.lineStart(first);
    if (!mayHoldMarks.test(note.slice(words, this.drafts.at(-1)?.end))) return;
    for (const draft of this.drafts.slice(before)) draft.content = content;
  }

  /** The lines that are ordinary text. */
  finish(labels: ReadonlySet<string>): TextLine[] {
    const found: TextLine[] = [];
    for (let index = 0; index < this.drafts.length; ) {
      const draft = this.drafts[index];
      if (!draft) break;
      const { content } = draft;
      if (!content) {
        found.push(textLine(draft, []));
        index += 1;
        continue;
      }
      const first = index;
      while (this.drafts[index]?.content === content) index += 1;
      const marks = inlineMarks(content, draft.from, labels);
      addOrdinaryLines(found, content, this.drafts.slice(first, index), marks);
    }
    return found;
  }
}

/** Adds the lines that begin in no mark, with the HTML that begins on them. */
function addOrdinaryLines(
  found: TextLine[],
  content: Content,
  lines: readonly DraftLine[],
  marks: readonly InlineMark[],
): void {
  let next = 0;
  let behind = -1;
  for (const line of lines) {
    for (let mark = marks[next]; mark; mark = marks[next]) {
      if (content.offsetOf(mark.start) >= line.start) break;
      behind = content.offsetOf(mark.end - 1) + 1;
      next += 1;
    }
    if (behind > line.start) continue;
    const hidden: SourceRange[] = [];
    for (let index = next; index < marks.length; index += 1) {
      const mark = marks[index];
      if (!mark) break;
      const start = content.offsetOf(mark.start);
      if (start >= line.end) break;
      if (mark.kind === 'html') hidden.push({ start, end: content.offsetOf(mark.end - 1) + 1 });
    }
    found.push(textLine(line, hidden));
  }
}

function textLine({ start, end, item, task, nextLine }: DraftLine, hidden: readonly SourceRange[]): TextLine {
  const range = { start, end };
  if (!item) return { range, hidden };
  const inItem: Mutable<NonNullable<TextLine['item']>> = { range: item };
  if (task) inItem.task = task;
  if (nextLine < item.end) inItem.below = { start: nextLine, end: item.end };
  return { range, hidden, item: inItem };
}
