import type { Entry } from '../../notation/entries';
import { readNote } from '../../notation/read-note';
import { lineStarts, type SourceRange } from '../../notation/source-range';
import { htmlText } from '../html-text';
import type { MarkdownItOfPreview, PreviewState, PreviewToken } from './markdown-it';
import { type PreviewNote, tagHtml } from './tag-html';

const tokenType = 'training_tag';

/** Entries by the line, from 0, on which their tag stands. */
function entriesByLine(src: string): ReadonlyMap<number, Entry> {
  const starts = lineStarts(src);
  const byLine = new Map<number, Entry>();
  let line = 0;
  for (const entry of readNote(src).entries) {
    while ((starts[line + 1] ?? Number.POSITIVE_INFINITY) <= entry.range.start) line += 1;
    byLine.set(line, entry);
  }
  return byLine;
}

/** How many characters of `text` are those of `src` from `start` on. */
function commonLength(text: string, src: string, start: number): number {
  let length = 0;
  while (length < text.length && text[length] === src[start + length]) length += 1;
  return length;
}

/** Where a token stands in the text, and the entry whose tag it begins with. */
interface TagInText {
  readonly src: string;
  readonly range: SourceRange;
  readonly entry: Entry;
}

/**
 * What the tokens stand for. It is no part of them: the editor hands all tokens of a note to another process, and a
 * whole text with each of them would hold everything up.
 */
type TagsOfTokens = WeakMap<PreviewToken, TagInText>;

/**
 * A token to be drawn in place of a text token; that one itself when its characters are not those of the note. Behind
 * what Markdown reads as another character, such as `&amp;`, words stay words.
 */
function tagToken(
  token: PreviewToken,
  entry: Entry,
  { src, Token }: PreviewState,
  tags: TagsOfTokens,
): PreviewToken {
  const before = token.content.indexOf(src.slice(entry.nameRange.start, entry.nameRange.end));
  const start = entry.nameRange.start - before;
  const end = start + commonLength(token.content, src, start);
  if (before < 0 || end < entry.nameRange.end) return token;
  const tag = new Token(tokenType, '', 0);
  tag.content = token.content;
  tags.set(tag, { src, range: { start, end }, entry });
  return tag;
}

function withTagTokens(
  { children, map }: PreviewToken,
  entries: ReadonlyMap<number, Entry>,
  state: PreviewState,
  tags: TagsOfTokens,
): PreviewToken[] | null {
  if (!children || !map) return children;
  let [line] = map;
  let isLineStart = true;
  return children.map((token) => {
    if (token.type === 'softbreak' || token.type === 'hardbreak') {
      line += 1;
      isLineStart = true;
      return token;
    }
    const entry = isLineStart ? entries.get(line) : undefined;
    isLineStart = false;
    return entry && token.type === 'text' ? tagToken(token, entry, state, tags) : token;
  });
}

/**
 * Draws the tags of notes in the editor's Markdown preview, and in what is exported with it.
 * @param noteOf what is known of the document behind `env`; nothing is drawn when it is no note of a journal
 */
export function drawTags<Markdown extends MarkdownItOfPreview>(
  markdown: Markdown,
  noteOf: (env: unknown) => PreviewNote | undefined,
): Markdown {
  const tags: TagsOfTokens = new WeakMap();
  // Which document it is, is told only when it is drawn.
  markdown.core.ruler.push(tokenType, (state) => {
    const entries = entriesByLine(state.src);
    if (entries.size === 0) return;
    for (const token of state.tokens)
      if (token.type === 'inline') token.children = withTagTokens(token, entries, state, tags);
  });
  markdown.renderer.rules[tokenType] = (tokens, index, _options, env) => {
    const token = tokens[index];
    const note = noteOf(env);
    const tag = token && tags.get(token);
    const content = token?.content ?? '';
    if (!note || !tag) return htmlText(content);
    const { src, range, entry } = tag;
    return tagHtml(src, range, entry, note) + htmlText(content.slice(range.end - range.start));
  };
  return markdown;
}
