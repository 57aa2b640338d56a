import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import rehypeStringify from 'rehype-stringify';
import remarkGfm from 'remark-gfm';
import remarkParse from 'remark-parse';
import remarkRehype from 'remark-rehype';
import { unified } from 'unified';
import { shareSheet } from '../../src/editor/share-sheet/share-sheet';

const note = `# Training in the week 2026-W09

2026-02-23 to 2026-03-01.

## Sessions

Kept: 1 of 2 planned sessions.

- Monday, 2026-02-23: 18:30 flexibility, 75 min, 7/10: kept
  - warm-up \\<b\\>

| Mon | Tue |
| --- | --- |
| 23 ✓ | 24 ? |

As of 2026-02-25.
`;

const sheet = (text: string) => shareSheet(text, { paper: 'a4', language: 'en' });
const bodyOf = (html: string) => /<main>\n([\s\S]*)\n<\/main>/.exec(html)?.[1] ?? '';

describe('a note to share as a page to print', () => {
  it('is what another reader of CommonMark and GFM makes of the note (remark and rehype)', () => {
    const other = String(
      unified().use(remarkParse).use(remarkGfm).use(remarkRehype).use(rehypeStringify).processSync(note),
    );
    const alike = (html: string) =>
      html
        .replace(/&#x3C;|&lt;/g, '<')
        .replace(/&gt;/g, '>')
        .replace(/\s+/g, '');
    assert.equal(alike(bodyOf(sheet(note))), alike(other));
  });

  it('has the heading as its title, and says for what paper it is', () => {
    assert.match(sheet(note), /<title>Training in the week 2026-W09<\/title>/);
    assert.match(sheet(note), /size: A4 portrait/);
    assert.match(
      shareSheet(note, { paper: 'letter', language: 'de' }),
      /lang="de"[\s\S]*size: letter portrait/,
    );
  });

  it('holds no script, no style and no frame that someone has typed, and loads nothing', () => {
    const html = sheet(
      '# <script>alert(1)</script>\n\n<img src=x onerror=alert(1)>\n\n[x](javascript:alert(1)) ![y](https://example.org/y.png)\n\n<style>*{}</style>\n',
    );
    assert.doesNotMatch(html, /<script|<img[^>]+onerror|javascript:/i);
    assert.equal(html.match(/<style>/g)?.length, 1);
    assert.match(html, /default-src 'none'; style-src 'unsafe-inline'/);
  });

  it('turns no text around: marks of direction are left out', () => {
    assert.doesNotMatch(sheet('# a\u202eb\n'), /\u202e/);
  });
});
