import assert from 'node:assert/strict';
import { type CursorContext, cursorContext, possibleTagStart } from '../../src/notation/cursor-context';
import type { NoteReading } from '../../src/notation/note-reading';
import { readNote } from '../../src/notation/read-note';
import { tagFields } from '../../src/notation/tag-fields';
import { tagNames } from '../../src/notation/tags/tag-readers';

/** The context at the `|` in a note's text. */
function at(marked: string): CursorContext | undefined {
  const offset = marked.indexOf('|');
  return cursorContext(marked.slice(0, offset) + marked.slice(offset + 1), offset);
}

function field(marked: string) {
  const context = at(marked);
  assert.equal(context?.place, 'field', marked);
  return context as Extract<CursorContext, { place: 'field' }>;
}

describe('where the cursor stands in a tag', () => {
  it('is behind # where a tag can begin, with or without marks before it', () => {
    for (const [marked, item] of [
      ['#|', 'none'],
      ['- #|', 'item'],
      ['- [ ] #|', 'task'],
      ['3. #|', 'item'],
      ['> - #|', 'item'],
      ['# Tuesday\r\n\r\n- [x] #|\r\n', 'task'],
      ['words of a paragraph\n#|', 'none'],
      ['- [ ] #session skill\n  - #|', 'item'],
      ['\ufeff#|', 'none'],
    ] as const) {
      const context = at(marked);
      assert.equal(context?.place, 'tag-name', marked);
      assert.equal(context?.place === 'tag-name' && context.item, item, marked);
    }
  });

  it('replaces the whole name, whichever letter it stands behind', () => {
    assert.deepEqual(at('- [ ] #se|s'), {
      place: 'tag-name',
      range: { start: 6, end: 10 },
      typed: '#se',
      item: 'task',
      alone: true,
    });
    const full = at('- [ ] #se|ssion flexibility 18:30');
    assert.equal(full?.place === 'tag-name' && full.alone, false);
  });

  it('is no tag in code, HTML, comments, links, headings, front matter or the middle of a line', () => {
    for (const marked of [
      'today #|',
      '`#|`',
      '```\n#|\n```',
      '~~~\n- [ ] #session |\n~~~',
      '    #|',
      '<!-- \n#|\n-->',
      '<div>\n#|\n</div>',
      '[#|](goals.md)',
      '# |',
      '#| Tuesday',
      '##|',
      '# Tuesday|',
      '---\n#|\n---\n\nwords',
      '|#session flexibility',
      '- [ ] |#session flexibility',
    ]) {
      assert.equal(at(marked), undefined, marked);
    }
  });

  it('is no field in a remark, in free words, or behind an unknown name', () => {
    for (const marked of [
      '- [ ] #session flexibility 18:30 -- hips |',
      '- [ ] #session flexibility -- |',
      '#why the last pose |',
      '- #win both sides |',
      '#holiday by |',
      '- [ ] #session skill <!-- for:| -->',
    ]) {
      assert.equal(at(marked), undefined, marked);
    }
  });

  it('is a field before a remark', () => {
    assert.equal(field('- [ ] #session flexibility 18:30 | -- hips level').tag, 'session');
  });

  it('is an empty field behind a blank, and a half-written one behind letters', () => {
    const empty = field('- [ ] #session |');
    assert.deepEqual([empty.tag, empty.typed, empty.range], ['session', '', { start: 15, end: 15 }]);
    const half = field('- [ ] #session flex|');
    assert.deepEqual([half.typed, half.range, half.wordsBefore], ['flex', { start: 15, end: 19 }, []]);
  });

  it('is the value of a named field', () => {
    const half = field('- [ ] #session flexibility for:low-s|p 18:30');
    assert.equal(half.name, 'for');
    assert.equal(half.typed, 'low-s');
    assert.deepEqual(half.range, { start: 31, end: 37 });
    const empty = field('- [ ] #session skill moved:|');
    assert.deepEqual([empty.name, empty.typed], ['moved', '']);
  });

  it('is one value of a list, which says what the others are', () => {
    const last = field('- [ ] #session skill for:low-split,|');
    assert.deepEqual([last.typed, last.taken], ['', ['low-split']]);
    const first = field('- [ ] #session skill with:ju|,coach');
    assert.deepEqual([first.typed, first.taken, first.range], ['ju', ['coach'], { start: 26, end: 28 }]);
  });

  it('is a value in quotation marks, closed or not', () => {
    const closed = field('- [ ] #session skill where:"old g|"');
    assert.deepEqual([closed.name, closed.quoted, closed.typed], ['where', true, 'old g']);
    const open = field('- [ ] #session skill where:"old g|');
    assert.deepEqual([open.name, open.quoted, open.typed], ['where', true, 'old g']);
    assert.deepEqual(open.wordsBefore, ['skill']);
  });

  it('knows the words before the cursor, without flags and numbers', () => {
    assert.deepEqual(field('#measure low-split gap warm 9cm |').wordsBefore, ['low-split', 'gap']);
    assert.deepEqual(field('#measure low-split | gap').wordsBefore, ['low-split']);
    assert.deepEqual(
      field('#measure low-split | 9cm side:left').fields.map((one) => one.text),
      ['low-split', '9cm', 'side:left'],
    );
  });

  it('says when another field begins right at the cursor', () => {
    assert.equal(field('- [ ] #session |18:30').beforeField, true);
    assert.equal(field('- [ ] #session | 18:30').beforeField, false);
  });

  it('stands in the right line of a note with CRLF', () => {
    const context = field('# Day\r\n\r\n#sore hips 3/10\r\n#measure low-split |\r\n#win yes\r\n');
    assert.deepEqual([context.tag, context.wordsBefore], ['measure', ['low-split']]);
  });

  it('is asked cheaply first', () => {
    assert.equal(possibleTagStart('- [ ] #session flex'), 6);
    assert.equal(possibleTagStart('#'), 0);
    for (const prose of ['today #', 'words', '', '# Tuesday', '##', '- # ']) {
      assert.equal(possibleTagStart(prose), undefined, prose);
    }
  });
});

describe('the named fields of the tags', () => {
  const everyName = [...new Set(tagNames.flatMap((tag) => tagFields[tag].named))];
  const unread = (reading: NoteReading, text: string): boolean =>
    reading.problems.some((one) => one.code === 'unreadable-field' && one.text === text);

  for (const tag of tagNames.filter((one) => one !== 'why' && one !== 'win')) {
    it(`are those that the reader of #${tag} takes`, () => {
      for (const name of everyName) {
        // An empty value is reported as `name:` when the field is known, and as unknown otherwise.
        const { problems } = readNote(`#${tag} ${name}:`);
        const known = problems.some(
          (one) => one.code === 'unreadable-field' && one.reason === 'empty-value' && one.text === `${name}:`,
        );
        assert.equal(known, tagFields[tag].named.includes(name), `${name}: of #${tag}`);
      }
    });
  }

  it('and their flags are read', () => {
    for (const tag of tagNames) {
      for (const flag of tagFields[tag].flags) {
        const rest = { measure: 'low-split 9cm', metric: 'gap', pain: 'hips' }[tag as string] ?? '"Wren"';
        assert.equal(unread(readNote(`#${tag} ${rest} ${flag}`), flag), false, `${flag} of #${tag}`);
      }
    }
  });
});
