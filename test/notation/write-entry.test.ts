import assert from 'node:assert/strict';
import fc from 'fast-check';
import type { Entry, SessionEntry } from '../../src/notation/entries';
import { readNote } from '../../src/notation/read-note';
import { applyTextEdits, type TextEdit } from '../../src/notation/text-edit';
import {
  addFieldEdits,
  fieldTokensOf,
  removeFieldEdits,
  replaceFieldEdits,
  setFieldEdits,
  tickEdits,
} from '../../src/notation/write-entry';

type Change = (text: string, session: SessionEntry) => readonly TextEdit[];

/** `text` with `change` made to its first session. */
function changed(text: string, change: Change): string {
  const session = readNote(text).entries.find((entry): entry is SessionEntry => entry.tag === 'session');
  assert.ok(session, text);
  return applyTextEdits(text, change(text, session));
}

const tick: Change = (text, session) => tickEdits(text, session, true);
const untick: Change = (text, session) => tickEdits(text, session, false);
const move: Change = (text, session) => addFieldEdits(text, session, { name: 'moved', text: '2026-02-26' });

describe('ticking', () => {
  it('changes the one character between the brackets', () => {
    assert.equal(changed('- [ ] #session skill -- a\n', tick), '- [x] #session skill -- a\n');
    assert.equal(changed('- [x] #session skill', untick), '- [ ] #session skill');
  });
  it('changes nothing when the box is as asked', () =>
    assert.equal(changed('- [X] #session skill', tick), '- [X] #session skill'));
  it('gives a list item without a box one', () =>
    assert.equal(changed('  * #session skill', tick), '  * [x] #session skill'));
  it('makes a plain line a list item', () =>
    assert.equal(changed('#session skill', tick), '- [x] #session skill'));
  it('leaves byte order mark, CRLF and a missing final newline alone', () =>
    assert.equal(
      changed('\ufeffa\r\n- [ ] #session skill\r\nb', tick),
      '\ufeffa\r\n- [x] #session skill\r\nb',
    ));
});

describe('writing a field', () => {
  it('adds it behind the last field and before the remark', () => {
    assert.equal(
      changed('- [ ] #session skill 18:30 -- slow', move),
      '- [ ] #session skill 18:30 moved:2026-02-26 -- slow',
    );
    assert.equal(
      changed('- [ ] #session skill — slow', move),
      '- [ ] #session skill moved:2026-02-26 — slow',
    );
    assert.equal(changed('#session skill   ', move), '#session skill moved:2026-02-26   ');
  });
  it('puts words with blanks in quotation marks', () =>
    assert.equal(
      changed('#session skill', (text, session) =>
        addFieldEdits(text, session, { name: 'where', text: 'old gym' }),
      ),
      '#session skill where:"old gym"',
    ));
  it('replaces the value that is there', () => {
    const rate: Change = (text, session) => setFieldEdits(text, session, session.rating, { text: '8/10' });
    assert.equal(changed('#session skill 7/10 18:30', rate), '#session skill 8/10 18:30');
    assert.equal(changed('#session skill 18:30', rate), '#session skill 18:30 8/10');
  });
  it('removes a field whole, with its name and the blank before it', () => {
    const remove: Change = (text, session) =>
      session.moved ? removeFieldEdits(text, session, session.moved.range) : [];
    assert.equal(changed('#session skill moved:2026-02-26 7/10 -- a', remove), '#session skill 7/10 -- a');
    const unlist: Change = (text, session) =>
      session.for[1] ? removeFieldEdits(text, session, session.for[1].range) : [];
    assert.equal(changed('#session skill for:a,b  7/10', unlist), '#session skill  7/10');
  });
});

describe('every edit, on any note', () => {
  const remark = fc.constantFrom('', ' -- words', ' — words, 7/10', ' -- <!-- x -->');
  const fields = fc.subarray(['18:30', '75min', '7/10', 'for:a,b', 'with:"my coach"', 'moved:2026-02-26']);
  const around = fc.stringMatching(/^[a-z #*_>-]{0,20}$/);
  const note = fc
    .tuple(
      around,
      fc.constantFrom('- [ ] ', '* [x] ', '1. [X] ', '', '- '),
      fields,
      remark,
      around,
      fc.constantFrom('\n', '\r\n', '\r'),
      fc.boolean(),
    )
    .map(([before, marks, words, end, after, ending, bom]) => {
      const line = `${marks}#session skill ${words.join(' ')}${end}`;
      return `${bom ? '\ufeff' : ''}${before}${ending}${ending}${line}${ending}${ending}${after}`;
    });
  const isSession = (entry: Entry): entry is SessionEntry => entry.tag === 'session';

  it('leaves every other character where it was, and reads back as asked', () => {
    fc.assert(
      fc.property(note, (text) => {
        const session = readNote(text).entries.find(isSession);
        if (!session) return;
        const rated = applyTextEdits(text, setFieldEdits(text, session, session.rating, { text: '9/10' }));
        assert.equal(readNote(rated).entries.find(isSession)?.rating?.value, 9);
        const ticked = applyTextEdits(text, tickEdits(text, session, true));
        assert.equal(readNote(ticked).entries.find(isSession)?.task?.checked, true);
        for (const token of fieldTokensOf(text, session)) {
          const without = applyTextEdits(text, removeFieldEdits(text, session, token.range));
          assert.ok(text.length - without.length >= token.text.length + 1);
          assert.equal(without.slice(0, session.nameRange.end), text.slice(0, session.nameRange.end));
        }
        const [first] = session.for;
        if (first) {
          const renamed = applyTextEdits(text, replaceFieldEdits(first, 'c'));
          assert.equal(renamed.length, text.length - first.value.length + 1);
        }
      }),
      { seed: 20260224, numRuns: 150 },
    );
  });
});
