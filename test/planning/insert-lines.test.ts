import assert from 'node:assert/strict';
import fc from 'fast-check';
import { describe, it } from 'mocha';
import type { Entry } from '../../src/notation/entries';
import { readNote } from '../../src/notation/read-note';
import { applyTextEdits } from '../../src/notation/text-edit';
import { insertLines } from '../../src/planning/insert-lines';

const session = (entry: Entry) => entry.tag === 'session';
const block = '- [ ] #session skill 18:30\n  - mounts';

function inserted(text: string, blocks = [block]): string | undefined {
  const edit = insertLines(text, blocks, [session]);
  return edit && applyTextEdits(text, [edit]);
}

describe('where a session goes in a note', () => {
  for (const [name, before, after] of [
    ['an empty note', '', '- [ ] #session skill 18:30\n  - mounts\n'],
    ['behind words, one line apart', 'Words', 'Words\n\n- [ ] #session skill 18:30\n  - mounts'],
    ['behind words with a final newline', 'Words\n', 'Words\n\n- [ ] #session skill 18:30\n  - mounts\n'],
    ['behind an empty line', 'Words\n\n', 'Words\n\n- [ ] #session skill 18:30\n  - mounts\n'],
    [
      'behind a list, close to it',
      '- #sore hips 3/10\n',
      '- #sore hips 3/10\n- [ ] #session skill 18:30\n  - mounts\n',
    ],
    [
      'behind the last session with its body',
      '# Day\n- [x] #session strength\n  - pulls\n\n  - and more\n\n# Evening\nWords\n',
      '# Day\n- [x] #session strength\n  - pulls\n\n  - and more\n- [ ] #session skill 18:30\n  - mounts\n\n# Evening\nWords\n',
    ],
    [
      'behind a nested session, as deep as it',
      '- evening\n\t- [ ] #session strength\n- words\n',
      '- evening\n\t- [ ] #session strength\n\t- [ ] #session skill 18:30\n\t  - mounts\n- words\n',
    ],
    [
      'behind the paragraph of a session that is no list item',
      '#session strength\nand words\n\nmore words',
      '#session strength\nand words\n- [ ] #session skill 18:30\n  - mounts\n\nmore words',
    ],
    [
      'outside of a quotation',
      '> - [ ] #session strength\n',
      '> - [ ] #session strength\n\n- [ ] #session skill 18:30\n  - mounts\n',
    ],
    [
      'before a fence that nothing closes',
      'Words\n```\ncode\n',
      'Words\n- [ ] #session skill 18:30\n  - mounts\n\n```\ncode\n',
    ],
    [
      'before a comment that nothing closes',
      '# Day\r\n<!-- later\r\n',
      '# Day\r\n- [ ] #session skill 18:30\r\n  - mounts\r\n\r\n<!-- later\r\n',
    ],
    [
      'behind front matter',
      '---\nmood: good\n---\n',
      '---\nmood: good\n---\n\n- [ ] #session skill 18:30\n  - mounts\n',
    ],
    [
      'behind front matter without a final newline',
      '---\nmood: good\n---',
      '---\nmood: good\n---\n\n- [ ] #session skill 18:30\n  - mounts',
    ],
    [
      'between front matter and a fence that nothing closes',
      '---\r\nmood: good\r\n---\r\n~~~\r\ncode',
      '---\r\nmood: good\r\n---\r\n- [ ] #session skill 18:30\r\n  - mounts\r\n\r\n~~~\r\ncode',
    ],
    ['with the note’s own line endings', 'a\rb\r', 'a\rb\r\r- [ ] #session skill 18:30\r  - mounts\r'],
  ] as const) {
    it(name, () => assert.equal(inserted(before), after));
  }

  it('keeps the order of several', () => {
    assert.equal(
      inserted('- [ ] #session strength\n', ['- [ ] #session skill', '- [ ] #session recovery']),
      '- [ ] #session strength\n- [ ] #session skill\n- [ ] #session recovery\n',
    );
  });
});

/** Notes as people and programs leave them: odd nesting, unclosed code, any line ending. */
const lineText = fc.constantFrom(
  '',
  'words',
  '# Tuesday',
  'Tuesday\n===',
  '- [ ] #session strength 07:00 60min 6/10 -- pulls',
  '- [x] #session flexibility',
  '  - warm-up',
  '\t- nested with a tab',
  '\t\tdeeper',
  '  * [ ] #session skill',
  '1. #session conditioning',
  '   body of the number',
  '#session skill',
  '> - [ ] #session strength',
  '> words',
  '- #sore hips 3/10',
  '#measure low-split gap 9,5cm',
  '```',
  '~~~ text',
  '    indented',
  '<!-- comment',
  '-->',
  '<div>',
  '---',
  'mood: good',
  '***',
  '| a | b |',
);
const note = fc
  .tuple(
    fc.array(lineText, { maxLength: 14 }),
    fc.constantFrom('\n', '\r\n', '\r'),
    fc.boolean(),
    fc.boolean(),
  )
  .map(([lines, ending, front, final]) => {
    const all = front ? ['---', 'mood: good', '---', ...lines] : lines;
    return all.join('\n').replaceAll('\n', ending) + (final ? ending : '');
  });

describe('adding lines to any note', function () {
  this.timeout(120_000);
  it('keeps every byte that stood there, and is read as what was added', () => {
    let refused = 0;
    let runs = 0;
    fc.assert(
      fc.property(note, (text) => {
        runs += 1;
        const edit = insertLines(text, [block], [session]);
        if (!edit) {
          refused += 1;
          return;
        }
        const after = applyTextEdits(text, [edit]);
        assert.equal(
          after.slice(0, edit.range.start) + after.slice(edit.range.start + edit.text.length),
          text,
        );
        assert.equal(edit.range.start, edit.range.end);
        const before = readNote(text).entries;
        const entries = readNote(after).entries;
        assert.equal(entries.length, before.length + 1);
        const own = entries.find(
          ({ range }) => range.start >= edit.range.start && range.start < edit.range.start + edit.text.length,
        );
        assert.equal(own?.tag, 'session');
        assert.equal(own?.task?.checked, false);
        assert.ok(own?.body);
        // No other line ending than the note's own comes in.
        const endings = new Set(edit.text.match(/\r\n|\n|\r/g));
        assert.equal(endings.size, 1);
        const used = text.match(/\r\n|\n|\r/g);
        if (used) assert.ok(used.includes([...endings][0] ?? ''));
        // A final line ending, or none, stays as it was.
        if (text !== '') assert.equal(/[\r\n]$/.test(after), /[\r\n]$/.test(text));
      }),
      { seed: 20260224, numRuns: 250 },
    );
    assert.ok(refused < runs / 20, `${refused} of ${runs} notes had no place`);
  });
});
