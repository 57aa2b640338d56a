import assert from 'node:assert/strict';
import { readNote } from '../../src/notation/read-note';

const tags = (text: string) => readNote(text).entries.map((entry) => entry.tag);

/** Places in which `#session` is a tag. */
const tagPlaces: Readonly<Record<string, string>> = {
  'a plain line': '#session skill',
  'a line of a paragraph': 'words\n#session skill\nwords',
  'a list item': '- #session skill',
  'a numbered item': '1. #session skill',
  'a task': '- [ ] #session skill',
  'a done task with a capital X': '* [X] #session skill',
  'a nested item': '- Tuesday\n  - [ ] #session skill',
  'a block quote': '> #session skill',
  'a task in a block quote': '> - [ ] #session skill',
  'an item whose words begin on the next line': '-\n  #session skill',
  'below a heading': '# Tuesday\n#session skill',
  'below front matter': '---\na: b\n---\n#session skill',
  'a task below a line that opens no front matter': '---\n\n- [ ] #session skill\n',
  'a quotation below such a line, with CRLF': '---\r\n> #session skill\r\n',
  'a task between two lines, the second not at its start': '---\n- [ ] #session skill\n ---\n',
  'a task below empty front matter': '---\n---\n- [ ] #session skill',
  'behind a byte order mark': '\ufeff#session skill',
  'with CRLF': 'words\r\n\r\n#session skill\r\n',
  'with CR alone': 'words\r\r#session skill\r',
  'with a tab behind the name': '#session\tskill',
  'inside emphasis': '*words\n#session skill*',
};

/** Places in which it is not. */
const otherPlaces: Readonly<Record<string, string>> = {
  'in the middle of a line': 'today #session skill',
  'a heading': '# session skill',
  'a heading that holds it': '## #session skill',
  'an underlined heading': '#session skill\n===',
  'inline code': '`#session skill`',
  'inline code over two lines': 'words `code\n#session skill` words',
  'fenced code': '```\n#session skill\n```',
  'an unclosed fence': '```\n#session skill\n',
  'fenced code with tildes in an item': '- words\n  ~~~\n  #session skill\n  ~~~',
  'indented code': 'words\n\n    #session skill',
  HTML: '<div>\n#session skill\n</div>',
  'a comment': '<!--\n#session skill\n-->',
  'a comment in a paragraph': 'words <!-- a\n#session skill --> words',
  'the words of a link': 'see [a\n#session skill](there.md)',
  'the words of an image': '![a\n#session skill](there.png)',
  'a link by reference': '[a\n#session skill]\n\n[a #session skill]: there.md',
  'front matter': '---\n#session skill\n---\n',
  'an escaped mark': '\\#session skill',
  'a number behind the mark': '#1 skill',
};

describe('where a tag is a tag', () => {
  for (const [place, text] of Object.entries(tagPlaces))
    it(place, () => assert.deepEqual(tags(text), ['session'], JSON.stringify(text)));
});

describe('where it is not', () => {
  for (const [place, text] of Object.entries(otherPlaces))
    it(place, () => assert.deepEqual(tags(text), [], JSON.stringify(text)));
});

describe('ranges', () => {
  it('count the characters of the text as given, a byte order mark and CRLF among them', () => {
    const text = '\ufeffwords\r\n- [x] #session skill 7/10\r\n\r\n> #win yes\r\n';
    const { entries } = readNote(text);
    assert.deepEqual(
      entries.map((entry) => text.slice(entry.range.start, entry.range.end)),
      ['#session skill 7/10', '#win yes'],
    );
  });

  it('count UTF-16 units behind characters beyond the basic plane', () => {
    const text = '🤸 handstands 🤸\n\n- [ ] #session skill -- 🤸 up';
    const [entry] = readNote(text).entries;
    assert.equal(entry && text.slice(entry.range.start, entry.range.end), '#session skill -- 🤸 up');
    assert.equal(entry?.remark && text.slice(entry.remark.range.start, entry.remark.range.end), '🤸 up');
  });

  it('leave out a backslash that breaks the line', () => {
    const text = '#session skill\\\nwords';
    const [entry] = readNote(text).entries;
    assert.equal(entry && text.slice(entry.range.start, entry.range.end), '#session skill');
  });
});

describe('input that is no note', () => {
  for (const [what, text] of Object.entries({
    'an empty file': '',
    'blank lines': '\n\n \n',
    'NUL characters': '#session skill\u0000 7/10\n\u0000',
    'lone surrogates': '#win \ud800 \udc00',
    'only a mark': '#',
    'only a fence': '```',
    'only front matter fences': '---\n---',
  }))
    it(`${what} gives a reading`, () => assert.ok(Array.isArray(readNote(text).entries)));

  it('a note of 5 MB full of tags holds nothing up: it counts as words', () => {
    assert.deepEqual(readNote('- [ ] #session skill\n'.repeat(250_000)).entries, []);
    assert.equal(readNote('- [ ] #session skill\n'.repeat(100)).entries.length, 100);
  });

  it('a note of 5 MB without tags is read without building a tree', () => {
    const text = 'plain words about a plain day, with nothing to count\n'.repeat(100_000);
    const untouched = () => {
      throw new Error('The Markdown reader was called.');
    };
    assert.deepEqual(readNote(text, untouched).entries, []);
  });
});
