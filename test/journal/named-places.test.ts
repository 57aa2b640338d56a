import assert from 'node:assert/strict';
import { JournalIndex } from '../../src/journal/journal-index';
import { nameAt, namedPlaces } from '../../src/journal/named-places';
import { openNote } from '../../src/journal/open-note';

const goals = `- #goal low-split
- #need flexibility 2/week routine:split-evening
- #rule low-split max:3/week
- #rule flexibility gap:48h
#event 2026-04-18 "Studio evening" for:low-split,handstand
- #goal handstand
`;
const routines = '- #routine split-evening flexibility\n- #routine low-split skill\n';
const day = `- [ ] #session flexibility for:handstand,low-split routine:split-evening -- low-split
#measure low-split gap 9cm
- \`#session flexibility for:low-split\` is code
`;

function journal(): JournalIndex {
  const index = new JournalIndex();
  for (const [path, text] of Object.entries({
    'goals.md': goals,
    'routines.md': routines,
    '2026-02-26.md': day,
  })) {
    index.replace(openNote(path, text));
  }
  return index;
}

/** Path, and the tag's line from `#` on, of each place. */
function shown(places: ReturnType<typeof namedPlaces>): readonly string[] {
  return places.map(({ note, entry, name }) => {
    const line = note.text.slice(entry.range.start, name.range.start);
    return `${note.path} ${line}>${note.text.slice(name.range.start, name.range.end)}`;
  });
}

describe('the places that name a goal or a routine', () => {
  it('are the goal’s own line, sessions, readings, events and rules about it', () => {
    assert.deepEqual(shown(namedPlaces(journal(), { of: 'goal', id: 'low-split' })), [
      '2026-02-26.md #session flexibility for:handstand,>low-split',
      '2026-02-26.md #measure >low-split',
      'goals.md #goal >low-split',
      'goals.md #rule >low-split',
      'goals.md #event 2026-04-18 "Studio evening" for:>low-split',
    ]);
  });

  it('are, of a routine, its own line, needs and sessions; a goal of the same name is another thing', () => {
    assert.deepEqual(shown(namedPlaces(journal(), { of: 'routine', id: 'split-evening' })), [
      '2026-02-26.md #session flexibility for:handstand,low-split routine:>split-evening',
      'goals.md #need flexibility 2/week routine:>split-evening',
      'routines.md #routine >split-evening',
    ]);
    assert.deepEqual(shown(namedPlaces(journal(), { of: 'routine', id: 'low-split' })), [
      'routines.md #routine >low-split',
    ]);
  });

  it('are found from any character of the name, its end included', () => {
    const index = journal();
    const note = index.note('2026-02-26.md');
    assert(note);
    const start = note.text.indexOf('low-split');
    for (const offset of [start, start + 4, start + 'low-split'.length]) {
      assert.deepEqual(nameAt(index, note, offset)?.thing, { of: 'goal', id: 'low-split' });
    }
    assert.equal(nameAt(index, note, note.text.indexOf('flexibility')), undefined);
    assert.equal(nameAt(index, note, note.text.indexOf('low-split', note.text.indexOf('--'))), undefined);
  });

  it('are none for a rule about a kind', () => {
    const index = journal();
    const note = index.note('goals.md');
    assert(note);
    const rule = note.text.indexOf('flexibility gap');
    assert.equal(nameAt(index, note, rule + 2), undefined);
  });
});
