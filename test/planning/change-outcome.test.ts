import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import { applyTextEdits } from '../../src/notation/text-edit';
import { changeOutcome, changeState, takenBack, wantedText } from '../../src/planning/change-outcome';
import type { NoteChange } from '../../src/planning/note-change';

const edit: NoteChange = {
  kind: 'edit',
  note: '2026-02-24.md',
  before: '# Tuesday\n\n- [ ] #session skill 18:30\nWords.\n',
  edits: [
    { range: { start: 14, end: 15 }, text: 'x' },
    { range: { start: 37, end: 37 }, text: ' 60min 5/10' },
    { range: { start: 38, end: 43 }, text: '' },
  ],
};
const wanted = '# Tuesday\n\n- [x] #session skill 18:30 60min 5/10\n.\n';
const create: NoteChange = { kind: 'create', note: '2026-02-26.md', text: '# Thursday\n' };

describe('what became of a change of a note', () => {
  it('is made when the note reads as wanted, whatever its lines end with', () => {
    assert.equal(wantedText(edit), wanted);
    assert.equal(changeState(edit, wanted), 'made');
    assert.equal(changeState(edit, wanted.replaceAll('\n', '\r\n')), 'made');
    assert.equal(changeState(create, '# Thursday\n'), 'made');
  });

  it('is missing when the note reads as before', () => {
    assert.equal(changeState(edit, edit.before), 'missing');
    assert.equal(changeState(create, undefined), 'missing');
  });

  it('is neither when a part was written, when someone else wrote, and when the note is gone', () => {
    assert.equal(changeState(edit, applyTextEdits(edit.before, edit.edits.slice(0, 1))), 'other');
    assert.equal(changeState(edit, `${edit.before}My words.\n`), 'other');
    assert.equal(changeState(edit, undefined), 'other');
    assert.equal(changeState(create, ''), 'other');
    assert.equal(changeState(create, '# Thurs'), 'other');
  });

  it('is told for a whole set, in its order', () => {
    const second: NoteChange = { ...create, note: '2026-02-27.md' };
    const third: NoteChange = { ...create, note: '2026-02-28.md' };
    const texts: Readonly<Record<string, string>> = {
      '2026-02-24.md': edit.before,
      '2026-02-26.md': '# Thursday\n',
      '2026-02-27.md': 'Mine.\n',
    };
    assert.deepEqual(
      changeOutcome([edit, create, second, third], (note) => texts[note]),
      { made: [create], missing: [edit, third], other: [second] },
    );
  });
});

describe('the way back from a change', () => {
  it('gives the note as it was, character by character', () => {
    const back = takenBack(edit);
    assert.ok(back.kind === 'edit');
    assert.equal(back.before, wanted);
    assert.equal(applyTextEdits(back.before, back.edits), edit.before);
  });

  it('removes a note that was created, and says with which words', () => {
    assert.deepEqual(takenBack(create), { kind: 'remove', note: '2026-02-26.md', before: '# Thursday\n' });
  });
});
