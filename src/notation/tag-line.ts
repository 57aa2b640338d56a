import type { EntryBase } from './entries';
import { cutFields, type TagWords, visibleText } from './field-tokens';
import type { TextLine } from './markdown/markdown-reader';
import type { Located } from './source-range';

/** A line that begins with `#name`, cut into its parts, before the tag's meaning is known. */
export interface TagLine {
  /** The tag's name without `#`. */
  readonly name: string;
  readonly base: EntryBase;
  readonly words: TagWords;
  /** Everything behind the name, for tags that hold free words. */
  readonly rest: Located<string>;
}

/** Blanks left by a hidden comment are one blank in the words. */
function spaced(words: Located<string>): Located<string> {
  return { value: words.value.replace(/[ \t]+/g, ' '), range: words.range };
}

/** Cuts a text line that begins with `#`; the name runs to the next blank. */
export function cutTagLine(text: string, line: TextLine): TagLine {
  const visible = visibleText(text, line.range, line.hidden);
  const nameEnd = /^#[^\s—]*/u.exec(visible)?.[0].length ?? 1;
  const start = line.range.start;
  const after = visible.slice(nameEnd);
  const leading = after.length - after.trimStart().length;
  const value = after.trim();
  const words = cutFields(after, start + nameEnd);
  const restStart = value === '' ? start + nameEnd : start + nameEnd + leading;
  const { item } = line;
  return {
    name: visible.slice(1, nameEnd),
    words,
    rest: { value, range: { start: restStart, end: restStart + value.length } },
    base: {
      range: line.range,
      nameRange: { start, end: start + nameEnd },
      fieldsEnd: words.fields.at(-1)?.range.end ?? start + nameEnd,
      itemRange: item ? { start: item.range.start, end: line.range.end } : line.range,
      ...(item?.task ? { task: item.task } : {}),
      ...(words.remark ? { remark: spaced(words.remark) } : {}),
      ...(item?.below ? { body: { range: item.below } } : {}),
    },
  };
}
