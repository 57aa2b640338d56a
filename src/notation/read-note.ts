import { withBlockTables } from './block-table';
import type { Entry, TagName } from './entries';
import { FieldReader } from './field-reader';
import { readFrontMatter } from './front-matter';
import { withGoalScopes } from './goal-scopes';
import type { MarkdownReader } from './markdown/markdown-reader';
import { scanLines } from './markdown/scan-lines';
import { nearestWord } from './near-miss';
import type { NotationProblem } from './notation-problem';
import type { NoteReading } from './note-reading';
import { cutTagLine, type TagLine } from './tag-line';
import { isTagName, tagNames, tagReaders } from './tags/tag-readers';

const nothing: NoteReading = { headings: [], entries: [], problems: [] };

/** Characters up to which a note is read. A day note has a thousand, a book a million. */
const longestRead = 4_000_000;

/** A line that may begin with a tag, behind marks of lists, quotes and tasks; or front matter. */
const mayHoldSomething = /(?:^\ufeff?|[\r\n])[ \t>*+\-0-9.)[\]xX]*#\p{L}|^\ufeff?---[ \t]*[\r\n]/u;

function readEntry<Tag extends TagName>(name: Tag, line: TagLine): [Entry, readonly NotationProblem[]] {
  const fields = new FieldReader(line.words.fields, line.base.nameRange);
  const entry = tagReaders[name](line, fields);
  const freeWords = name === 'why' || name === 'win';
  return [entry, freeWords ? [] : fields.finish()];
}

/** An unknown name is an ordinary hashtag, unless it is nearly one of the notation's. */
function nearMiss(line: TagLine): NotationProblem | undefined {
  const near = nearestWord(line.name, tagNames);
  return near === undefined
    ? undefined
    : { code: 'unknown-tag', range: line.base.nameRange, text: `#${line.name}`, suggestion: `#${near}` };
}

/**
 * Reads one note: its front matter, headings, entries and problems, in the order of the text. Any text is valid
 * input; one that is longer than any note a person writes by hand counts as words without tags. Ranges count the
 * UTF-16 units of `text` as given, a byte order mark included.
 * @param markdown Decides which lines are ordinary text.
 */
export function readNote(text: string, markdown: MarkdownReader = scanLines): NoteReading {
  if (text.length > longestRead || !mayHoldSomething.test(text)) return nothing;
  const reading = markdown(text);
  const entries: Entry[] = [];
  const problems: NotationProblem[] = [];
  for (const line of reading.lines) {
    const tag = cutTagLine(text, line);
    if (isTagName(tag.name)) {
      const [entry, found] = readEntry(tag.name, tag);
      entries.push(entry);
      problems.push(...found);
    } else {
      const problem = nearMiss(tag);
      if (problem) problems.push(problem);
    }
  }
  const withTables = withBlockTables(text, entries, reading.headings);
  problems.push(...withTables.problems);
  const front = reading.frontMatter && readFrontMatter(text, reading.frontMatter);
  return {
    ...(front ? { frontMatter: front.frontMatter } : {}),
    headings: reading.headings,
    entries: withGoalScopes(withTables.entries, reading.headings, text.length),
    problems: [...(front?.problems ?? []), ...problems],
  };
}
