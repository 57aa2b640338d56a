import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import {
  addPlanLine,
  type PlanLine,
  planLinesOf,
  planLineWords,
} from '../../../src/planning/coach/plan-lines';
import { applied, changed, journalOf, type Notes } from '../journal-of';

const heron: Notes = {
  'journal.md': '# Heron\n',
  'goals.md':
    '- #goal pull-ups by:2026-05-31\n- #need strength 2/week 60min 7/10 gap:48h routine:pull -- private to Heron\n',
  'plan.md':
    '- #routine pull strength 60min regions:forearms -- also private\n  - warm-up, 10 min\n  - pull-ups, 4 x 5\n\n' +
    '#need recovery 1/week 30min 2/10\n',
};

const line = (words: string): PlanLine => {
  const found = planLinesOf(journalOf(heron)).find((one) => planLineWords(one).startsWith(words));
  assert(found, words);
  return found;
};

describe('a routine or a need for several journals', () => {
  const added = (notes: Notes, words: string) =>
    changed(notes, addPlanLine(journalOf(notes), line(words)).changes);

  it('is one of those in the journal of one athlete', () => {
    assert.deepEqual(planLinesOf(journalOf(heron)).map(planLineWords), [
      'routine pull strength 60min regions:forearms',
      'need strength 2/week 60min 7/10 gap:48h routine:pull',
      'need recovery 1/week 30min 2/10',
    ]);
  });

  it('stands behind the last routine, with its exercises and without the remark', () => {
    const notes = {
      'journal.md': '# Wren\n',
      'own.md': '# Mine\n\n- #routine trunk strength\n  - plank\n\nWords.\n',
    };
    assert.deepEqual(added(notes, 'routine pull'), {
      'own.md':
        '# Mine\n\n- #routine trunk strength\n  - plank\n- #routine pull strength 60min regions:forearms\n  - warm-up, 10 min\n  - pull-ups, 4 x 5\n\nWords.\n',
    });
  });

  it('asks every week, outside of the goals of the other athlete, with the routine that it names', () => {
    const notes = { 'journal.md': '# Wren\n\n- #goal bridge by:2026-06-01\n- #need flexibility 2/week\n' };
    const into = journalOf(notes);
    const result = addPlanLine(into, line('need strength'));
    assert.deepEqual([result.state, result.withRoutine], ['added', 'pull']);
    const after = journalOf(applied(notes, result.changes));
    assert.deepEqual(
      after.plan.needs.map(({ goal, kind }) => [goal, kind]),
      [
        ['bridge', 'flexibility'],
        [undefined, 'strength'],
      ],
    );
    assert.deepEqual(after.plan.routines.get('pull')?.regions, ['forearms']);
    assert.doesNotMatch(JSON.stringify(result.changes), /private/);
  });

  it('is not doubled: what is there is there, whoever asks for it', () => {
    const notes: Notes = { 'journal.md': '# Wren\n' };
    const once = applied(notes, addPlanLine(journalOf(notes), line('need strength')).changes);
    for (const words of ['need strength', 'routine pull'])
      assert.deepEqual(addPlanLine(journalOf(once), line(words)), { state: 'there', changes: [] });
    const asked = { 'goals.md': '- #goal easy\n- #need recovery 1/week 30min 2/10 -- own words\n' };
    assert.equal(addPlanLine(journalOf(asked), line('need recovery')).state, 'there');
    const other = { 'goals.md': '- #need recovery 2/week 30min 2/10\n' };
    assert.equal(addPlanLine(journalOf(other), line('need recovery')).state, 'added');
  });

  it('leaves a routine of the same name with other exercises as it is', () => {
    const notes = { 'plan.md': '- #routine pull strength 60min regions:forearms\n  - rope\n' };
    assert.deepEqual(addPlanLine(journalOf(notes), line('routine pull')), { state: 'taken', changes: [] });
    const need = addPlanLine(journalOf(notes), line('need strength'));
    assert.deepEqual([need.state, need.withRoutine], ['added', undefined]);
  });

  it('makes a note in the folder of a journal that has none to put it in', () => {
    const into = journalOf({ 'wren/2026-02-25.md': 'words\n' }, 'wren');
    assert.deepEqual(addPlanLine(into, line('need recovery')).changes, [
      { kind: 'create', note: 'wren/needs.md', text: '- #need recovery 1/week 30min 2/10\n' },
    ]);
  });
});
