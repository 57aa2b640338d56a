import assert from 'node:assert/strict';
import fc from 'fast-check';
import { describe, it } from 'mocha';
import { readNote } from '../../../src/notation/read-note';
import { writeComment } from '../../../src/planning/coach/comment';
import { changed, date, journalOf, type Notes } from '../journal-of';

/** A Wednesday. */
const today = date('2026-02-25');

function commented(notes: Notes, words: string, heading = 'From the coach'): Notes {
  const written = writeComment(journalOf(notes), today, { words, heading });
  return written ? changed(notes, written.changes) : {};
}

const toDo = '# Friday\n\n- [ ] #session skill 18:30 45min\n  - handstands\n';

describe('a comment for an athlete', () => {
  it('stands as a block quote under the coach’s heading at the end of the next note', () => {
    assert.deepEqual(
      commented({ '2026-02-27.md': toDo, '2026-03-02.md': toDo }, 'Slow down on the way in.'),
      {
        '2026-02-27.md': `${toDo}\n## From the coach\n\n> Slow down on the way in.\n`,
      },
    );
  });

  it('goes into today’s note while a session in it is to do, and no longer when none is', () => {
    const notes = { '2026-02-25.md': toDo, '2026-02-27.md': toDo };
    assert.deepEqual(Object.keys(commented(notes, 'Well done.')), ['2026-02-25.md']);
    const done = { ...notes, '2026-02-25.md': toDo.replace('[ ]', '[x]') };
    assert.deepEqual(Object.keys(commented(done, 'Well done.')), ['2026-02-27.md']);
  });

  it('gets a note of tomorrow when nothing is written ahead', () => {
    assert.deepEqual(commented({ '2026-02-24.md': toDo }, 'See you on Thursday.'), {
      '2026-02-26.md': '# Thursday, 2026-02-26\n\n## From the coach\n\n> See you on Thursday.\n',
    });
  });

  it('joins earlier comments under the same heading, wherever that stands', () => {
    const notes = { '2026-02-27.md': `## From the coach\n\n> One.\n\n## Mine\n\nwords\n` };
    assert.deepEqual(commented(notes, 'Two.'), {
      '2026-02-27.md': '## From the coach\n\n> One.\n\n> Two.\n\n## Mine\n\nwords\n',
    });
  });

  it('has the heading that the coach chose, and the line endings of the note', () => {
    assert.deepEqual(commented({ '2026-02-27.md': 'words\r\n' }, 'Hello', '  Words of\nmine # '), {
      '2026-02-27.md': 'words\r\n\r\n## Words of mine\r\n\r\n> Hello\r\n',
    });
    assert.match(commented({}, 'Hello', ' # ')['2026-02-26.md'] ?? '', /^## From the coach$/m);
  });

  it('is nothing without words', () => {
    assert.equal(writeComment(journalOf({}), today, { words: ' \n ', heading: 'x' }), undefined);
  });

  it('keeps a tag in it from counting', () => {
    const [text = ''] = Object.values(
      commented(
        { '2026-02-27.md': toDo },
        '#pain hips 3/10\n- [ ] #session skill\n```\nwords\n# Not a heading',
      ),
    );
    assert.ok(
      text.endsWith('> \\#pain hips 3/10\n> - [ ] \\#session skill\n> \\```\n> words\n> \\# Not a heading\n'),
      text,
    );
    assert.equal(readNote(text).entries.length, 1);
  });

  const piece = fc.constantFrom(
    '#session skill',
    '# x',
    '- ',
    '> ',
    '[ ] ',
    'words',
    ' ',
    '\n',
    '\n\n',
    '```',
    '~~~',
    '<!--',
    '1. ',
    '\\',
    '`',
    '*',
    '---',
    '===',
    '    ',
    '\t',
  );
  const anyText = fc.array(piece, { maxLength: 12 }).map((pieces) => pieces.join(''));

  it('adds no tag and takes none away, whatever the coach and the athlete wrote', () => {
    fc.assert(
      fc.property(anyText, anyText, (note, words) => {
        const notes = { '2026-02-27.md': note };
        const after = commented(notes, words);
        if (words.trim() === '') {
          assert.deepEqual(after, {});
          return;
        }
        const tags = (text: string) =>
          readNote(text).entries.map(({ range }) => text.slice(range.start, range.end));
        for (const [path, text] of Object.entries(after)) {
          assert.deepEqual(tags(text), path === '2026-02-27.md' ? tags(note) : []);
          assert.ok(path !== '2026-02-27.md' || text.length > note.length);
        }
      }),
      { seed: 20260225, numRuns: 400 },
    );
  });
});
