import type { Entry, EntryOf, TagName } from '../../src/notation/entries';
import { readNote } from '../../src/notation/read-note';
import type { SourceRange } from '../../src/notation/source-range';

/** The only entry of `text`, which must be of `tag`. */
export function only<Tag extends TagName>(tag: Tag, text: string): EntryOf<Tag> {
  const { entries } = readNote(text);
  const [entry, ...more] = entries;
  if (entry?.tag !== tag || more.length > 0)
    throw new Error(`Expected one #${tag}, found ${entries.map((one) => one.tag).join(', ') || 'none'}.`);
  return entry as Entry as EntryOf<Tag>;
}

/** The problems of `text` in short: code or reason, the characters, and the suggestion if there is one. */
export function problemsOf(text: string): string[] {
  return readNote(text).problems.map((problem) => {
    const what = problem.code === 'unreadable-field' ? problem.reason : problem.code;
    const suggestion = 'suggestion' in problem ? ` -> ${problem.suggestion}` : '';
    return `${what}: ${text.slice(problem.range.start, problem.range.end)}${suggestion}`;
  });
}

/** The characters of `range`. */
export function cut(text: string, range: SourceRange | undefined): string | undefined {
  return range && text.slice(range.start, range.end);
}
