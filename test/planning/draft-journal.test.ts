import assert from 'node:assert/strict';
import fc from 'fast-check';
import { describe, it } from 'mocha';
import { applyTextEdits, type TextEdit } from '../../src/notation/text-edit';
import { dayNumber } from '../../src/notation/time/iso-date';
import { composeEdits } from '../../src/planning/compose-edits';
import { DraftJournal } from '../../src/planning/draft-journal';
import { applied, date, journalOf } from './journal-of';

/** Edits of a text of `length` characters, in order and not overlapping. */
function editsOf(length: number): fc.Arbitrary<readonly TextEdit[]> {
  const points = fc.array(fc.integer({ min: 0, max: length }), { maxLength: 8 });
  return fc
    .tuple(points, fc.array(fc.string({ maxLength: 3 }), { minLength: 4, maxLength: 4 }))
    .map(([numbers, texts]): readonly TextEdit[] => {
      const sorted = [...numbers].sort((one, other) => one - other);
      return Array.from({ length: Math.floor(sorted.length / 2) }, (_, index) => ({
        range: { start: sorted[2 * index] ?? 0, end: sorted[2 * index + 1] ?? 0 },
        text: texts[index] ?? '',
      }));
    });
}

describe('edits made one after the other, as one step', () => {
  it('touches only what either of them touches', () => {
    // one two three -> one 2 three -> one 2 three four, in two places
    assert.deepEqual(
      composeEdits(
        13,
        [{ range: { start: 4, end: 7 }, text: '2' }],
        [{ range: { start: 11, end: 11 }, text: ' four' }],
      ),
      [
        { range: { start: 4, end: 7 }, text: '2' },
        { range: { start: 13, end: 13 }, text: ' four' },
      ],
    );
  });

  it('lets the second change what the first has written', () => {
    const first = [{ range: { start: 4, end: 7 }, text: 'zwei' }];
    const second = [{ range: { start: 2, end: 6 }, text: '-' }];
    // 'one two three' -> 'one zwei three' -> 'on-ei three'
    assert.deepEqual(composeEdits(13, first, second), [{ range: { start: 2, end: 7 }, text: '-ei' }]);
  });

  it('leads to the same text as one after the other, in order and without overlaps', () => {
    const scene = fc
      .string({ maxLength: 30 })
      .chain((text) =>
        editsOf(text.length).chain((first) =>
          fc.tuple(fc.constant(text), fc.constant(first), editsOf(applyTextEdits(text, first).length)),
        ),
      );
    fc.assert(
      fc.property(scene, ([text, first, second]) => {
        const both = composeEdits(text.length, first, second);
        assert.equal(applyTextEdits(text, both), applyTextEdits(applyTextEdits(text, first), second));
        for (const [index, { range }] of both.entries())
          assert.ok(range.start <= range.end && range.start >= (both[index - 1]?.range.end ?? 0));
      }),
      { seed: 20260301, numRuns: 1000 },
    );
  });
});

describe('a draft of a journal', () => {
  const notes = {
    'rules.md': '- #rule flexibility gap:24h\n',
    '2026-03-02.md': '- [ ] #session flexibility 18:00 60min 7/10\n',
  };
  const day = (text: string) => dayNumber(date(text));

  it('reads as if its changes were made, and leaves the journal as it is', () => {
    const journal = journalOf(notes);
    const draft = new DraftJournal(journal);
    draft.write([
      {
        kind: 'edit',
        note: 'rules.md',
        before: notes['rules.md'],
        edits: [{ range: { start: 24, end: 27 }, text: '48h' }],
      },
      { kind: 'create', note: '2026-03-04.md', text: '- [ ] #session skill 18:00 45min 5/10\n' },
    ]);
    assert.equal(draft.journal.plan.rules[0]?.gap?.minutes, 2880);
    assert.deepEqual(
      draft.journal.sessions(day('2026-03-01'), day('2026-03-08')).map(({ kind }) => kind),
      ['flexibility', 'skill'],
    );
    assert.equal(journal.plan.rules[0]?.gap?.minutes, 1440);
    assert.equal(journal.sessions(day('2026-03-01'), day('2026-03-08')).length, 1);
  });

  it('makes of several changes one a note', () => {
    const draft = new DraftJournal(journalOf(notes));
    const rule = (before: string, text: string) =>
      ({
        kind: 'edit',
        note: 'rules.md',
        before,
        edits: [{ range: { start: before.length, end: before.length }, text }],
      }) as const;
    draft.write([rule(notes['rules.md'], '- #rule hard max:3/week\n')]);
    draft.write([rule(`${notes['rules.md']}- #rule hard max:3/week\n`, '- #rule any cap:2h\n')]);
    draft.write([{ kind: 'create', note: '2026-03-04.md', text: 'One.\n' }]);
    draft.write([
      {
        kind: 'edit',
        note: '2026-03-04.md',
        before: 'One.\n',
        edits: [{ range: { start: 5, end: 5 }, text: 'Two.\n' }],
      },
    ]);
    assert.equal(draft.changes.length, 2);
    assert.deepEqual(applied(notes, draft.changes), {
      ...notes,
      'rules.md': '- #rule flexibility gap:24h\n- #rule hard max:3/week\n- #rule any cap:2h\n',
      '2026-03-04.md': 'One.\nTwo.\n',
    });
  });

  it('refuses a change that was planned for other words', () => {
    const draft = new DraftJournal(journalOf(notes));
    assert.throws(
      () => draft.write([{ kind: 'edit', note: 'rules.md', before: 'old', edits: [] }]),
      RangeError,
    );
    assert.throws(() => draft.write([{ kind: 'create', note: 'rules.md', text: 'new' }]), RangeError);
    assert.deepEqual(draft.changes, []);
  });
});
