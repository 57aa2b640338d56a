import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import { openNote } from '../../../src/journal/open-note';
import { athleteFacts } from '../../../src/training/roster/athlete-facts';
import { KeptFacts } from '../../../src/training/roster/kept-facts';
import { date } from '../dates';
import { journalFromNotes } from '../journal-from-text';

describe('the facts that are kept of many athletes', () => {
  const on = (day: string) => ({ today: date(day), zone: 'UTC' });
  const athletes = () =>
    Array.from({ length: 30 }, (_, index) =>
      journalFromNotes({ [`2026-02-${String((index % 20) + 1).padStart(2, '0')}.md`]: '- #win held it\n' }),
    );

  it('are worked out again for the one whose journal changed, and for nobody else', () => {
    let worked = 0;
    const kept = new KeptFacts((context) => {
      worked += 1;
      return athleteFacts(context);
    });
    const journals = athletes();
    const all = () => journals.map((journal) => kept.of(journal, on('2026-02-25')));
    const before = all();
    assert.equal(worked, 30);
    assert.deepEqual(all(), before);
    assert.equal(worked, 30, 'nothing changed');

    const [first] = journals;
    assert.ok(first);
    first.replace(openNote('2026-02-24.md', '- #pain hips 4/10\n'));
    kept.forget(first);
    const [changed, ...others] = all();
    assert.equal(worked, 31);
    assert.deepEqual([changed?.lastLog?.date, changed?.pains.length], ['2026-02-24', 1]);
    assert.deepEqual(others, before.slice(1));
  });

  it('are worked out again for everybody on another day', () => {
    const kept = new KeptFacts();
    const [journal] = athletes();
    assert.ok(journal);
    assert.equal(kept.of(journal, on('2026-02-25')).lastLog?.daysAgo, 24);
    assert.equal(kept.of(journal, on('2026-02-26')).lastLog?.daysAgo, 25);
  });
});
