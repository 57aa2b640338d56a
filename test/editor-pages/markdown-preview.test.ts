import assert from 'node:assert/strict';
import MarkdownIt from 'markdown-it';
import { describe, it } from 'mocha';
import { drawTags } from '../../src/editor/markdown-preview/draw-tags';
import type { PreviewNote } from '../../src/editor/markdown-preview/tag-html';

const note: PreviewNote = {
  state: (entry) =>
    entry.skipped
      ? { is: 'skipped', word: 'skipped' }
      : entry.task?.checked
        ? { is: 'done', word: 'done' }
        : { is: 'overdue', word: 'overdue' },
  goalAddress: (id) => (id === 'low-split' ? 'x:goal?a=1&b=2' : undefined),
};

function render(text: string, of: PreviewNote | undefined = note): string {
  return drawTags(new MarkdownIt({ html: true }), () => of).render(text);
}

const plain = (text: string) => new MarkdownIt({ html: true }).render(text);

/** What is read of a page. */
const words = (html: string) =>
  html
    .replace(/<[^>]*>/g, '')
    .replace(/&amp;/g, '&')
    .replace(/&lt;/g, '<');

describe('tags in the Markdown preview', () => {
  it('are chips; a session has its box as a shape with a name, and links to its goal', () => {
    assert.equal(
      render('- [x] #session flexibility 18:30 8/10 for:low-split,other -- hips < level\n'),
      '<ul>\n<li><span class="training-box training-done" role="img" aria-label="done">☑</span> ' +
        '<span class="training-tag">#session</span> flexibility 18:30 8/10 for:' +
        '<a class="training-goal" href="x:goal?a=1&amp;b=2">low-split</a>,other -- ' +
        '<span class="training-remark">hips &lt; level</span></li>\n</ul>\n',
    );
  });

  it('say in a word what a shape does not tell', () => {
    assert.match(
      render('- [ ] #session skill skipped:sore\n'),
      /☒<\/span> <span class="training-tag">#session<\/span> <span class="training-state training-skipped">skipped<\/span>/,
    );
    assert.match(render('- [ ] #session skill\n'), /training-overdue">overdue<\/span>/);
    assert.doesNotMatch(render('- [x] #session skill\n'), /training-state/);
  });

  it('stand on every line of a paragraph, and in no code, heading or prose', () => {
    const text =
      '#measure low-split gap 9cm\n#win both hands off\n\n`#win no` and #win no\n\n    #win code\n';
    assert.equal(render(text).match(/class="training-tag"/g)?.length, 2);
  });

  it('keep every word of the note', () => {
    for (const text of [
      '- [ ] #session flexibility 18:30 for:low-split -- with *stress* and `code`\n  - #win inside\n',
      '#goal low-split by:2026-06-14 "A & B"\n',
      '- [x] #session skill &amp; more\n',
      '> - [ ] #session skill 45min\n',
    ]) {
      const read = words(render(text))
        .replace(/☑|☐|☒|➜/g, '')
        .replace(/overdue|done/g, '')
        .replace(/\s+/g, ' ');
      assert.equal(
        read,
        words(plain(text))
          .replace(/\[[ x]\]/g, '')
          .replace(/\s+/g, ' '),
      );
    }
  });

  it('run nothing that a note says', () => {
    const html = render('- [ ] #session flexibility for:low-split -- a"onmouseover="x\n');
    assert.doesNotMatch(html, /onmouseover="x/);
    assert.match(html, /a&quot;onmouseover=&quot;x/);
  });

  it('carry nothing of the text around them: the editor hands all tokens to another process', () => {
    const tags = (lines: number) => {
      const state = drawTags(new MarkdownIt(), () => note).parse('- #win one of many\n'.repeat(lines), {});
      return JSON.stringify(state).length;
    };
    assert.ok(tags(400) < 4.2 * tags(100), `${tags(400)} against ${tags(100)}`);
  });

  it('leave a document that is no note as it is', () => {
    const text = '- [ ] #session flexibility\n';
    assert.equal(drawTags(new MarkdownIt(), () => undefined).render(text), new MarkdownIt().render(text));
  });
});
