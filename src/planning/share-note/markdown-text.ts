import { withoutDirectionMarks } from '../../notation/direction-marks';

/** One line of ordinary Markdown text: whatever `words` holds, it opens no tag, heading, link, code or HTML. */
export function plainText(words: string): string {
  return withoutDirectionMarks(words)
    .replace(/\s+/gu, ' ')
    .trim()
    .replace(/[\\`*_[\]<>#|~&!]/g, '\\$&');
}

/** A list item with further items beneath it. */
export interface ListItem {
  readonly text: string;
  readonly below?: readonly string[];
}

/** A heading with what stands under it. */
export interface Section {
  readonly heading: string;
  /** Paragraphs in front of the list. */
  readonly paragraphs?: readonly string[];
  readonly items: readonly ListItem[];
}

function itemLines({ text, below = [] }: ListItem): readonly string[] {
  return [`- ${text}`, ...below.map((line) => `  - ${line}`)];
}

/** A section as Markdown; nothing for one that says nothing. */
export function sectionText({ heading, paragraphs = [], items }: Section): string {
  if (paragraphs.length + items.length === 0) return '';
  const list = items.flatMap(itemLines).join('\n');
  return [`## ${heading}`, ...paragraphs, ...(list === '' ? [] : [list])].join('\n\n');
}
