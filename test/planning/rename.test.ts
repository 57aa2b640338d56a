import assert from 'node:assert/strict';
import { type NamedThing, nameAt, namedPlaces } from '../../src/journal/named-places';
import { applyTextEdits } from '../../src/notation/text-edit';
import { refusedName, renameChanges } from '../../src/planning/rename';
import { journalOf } from './journal-of';

const goals = `# Goals

- #goal low-split by:2026-06-14 "Front split, my low-split"
  - #metric gap from:14cm to:0cm sides
  - #step half by:2026-04-12 metric:gap to:7cm
  - #need flexibility 2/week 60min 8/10 routine:split-evening
- #rule low-split gap:72h
- #goal handstand by:2026-06-14
  - #metric gap from:9cm to:0cm
#event 2026-04-18 "Studio evening" for:low-split,handstand
`;
const routines = '- #routine split-evening flexibility regions:hips\r\n  - low-split drills\r\n';
const day = `- [ ] #session flexibility for:handstand,low-split routine:split-evening -- low-split again
- #measure low-split gap 9cm side:left
- #measure handstand gap 4cm
- \`#session flexibility for:low-split\` is code
`;
const notes = { 'goals.md': goals, 'log/2026-02-26.md': day, 'routines.md': routines };

/** The notes that change, with their whole text afterwards. */
function renamed(thing: NamedThing, wanted: string): Record<string, string> {
  return Object.fromEntries(
    renameChanges(namedPlaces(journalOf(notes), thing), wanted).map((change) => {
      assert.ok(change.kind === 'edit');
      return [change.note, applyTextEdits(change.before, change.edits)];
    }),
  );
}

describe('renaming', () => {
  it('gives a goal its new name on its line, in rules, events, sessions and readings, and nowhere in words', () => {
    assert.deepEqual(renamed({ of: 'goal', id: 'low-split' }, 'front-split'), {
      'goals.md': goals
        .replace('#goal low-split', '#goal front-split')
        .replace('#rule low-split', '#rule front-split')
        .replace('for:low-split', 'for:front-split'),
      'log/2026-02-26.md': day
        .replace('handstand,low-split', 'handstand,front-split')
        .replace('#measure low-split', '#measure front-split'),
    });
  });

  it('gives a routine its new name in needs and sessions, line endings as they were', () => {
    assert.deepEqual(renamed({ of: 'routine', id: 'split-evening' }, 'long-evening'), {
      'goals.md': goals.replace('routine:split-evening', 'routine:long-evening'),
      'log/2026-02-26.md': day.replace('routine:split-evening', 'routine:long-evening'),
      'routines.md': routines.replace('split-evening', 'long-evening'),
    });
  });

  it('gives a metric its new name in its goal alone: another goal has one of the same name', () => {
    assert.deepEqual(renamed({ of: 'metric', id: 'gap', goal: 'low-split' }, 'height'), {
      'goals.md': goals
        .replace('#metric gap from:14cm', '#metric height from:14cm')
        .replace('metric:gap', 'metric:height'),
      'log/2026-02-26.md': day.replace('low-split gap 9cm', 'low-split height 9cm'),
    });
  });

  it('finds the metric under the cursor', () => {
    const journal = journalOf(notes);
    const note = journal.note('log/2026-02-26.md');
    assert.ok(note);
    assert.deepEqual(nameAt(journal, note, day.indexOf('gap 9cm') + 1)?.thing, {
      of: 'metric',
      id: 'gap',
      goal: 'low-split',
    });
  });

  it('changes nothing when the name stays', () => {
    assert.deepEqual(renamed({ of: 'goal', id: 'low-split' }, 'low-split'), {});
  });

  it('refuses what is no word, what is taken, and a goal with the name of a kind or a region', () => {
    const journal = journalOf(notes);
    const goal = { of: 'goal', id: 'low-split' } as const;
    assert.equal(refusedName(journal, goal, 'front split'), 'not-a-word');
    assert.equal(refusedName(journal, goal, ''), 'not-a-word');
    assert.equal(refusedName(journal, goal, 'handstand'), 'taken');
    assert.equal(refusedName(journal, goal, 'flexibility'), 'kind-or-region');
    assert.equal(refusedName(journal, goal, 'hips'), 'kind-or-region');
    assert.equal(refusedName(journal, goal, 'front-split'), undefined);
    assert.equal(refusedName(journal, goal, 'low-split'), undefined);
    assert.equal(refusedName(journal, { of: 'metric', id: 'gap', goal: 'low-split' }, 'hips'), undefined);
    assert.equal(refusedName(journal, { of: 'routine', id: 'split-evening' }, 'handstand'), undefined);
  });
});
