import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import { rosterPageData } from '../../src/editor/roster-page/page-data';
import { rosterNodes } from '../../src/editor/views/roster-nodes';
import { KeptFacts } from '../../src/training/roster/kept-facts';
import { allNodes, block, english, type Notes, nodeOf, rows, viewed } from './viewed';

// 2026-02-25 is a Wednesday.
const wren = {
  'journal.md': '#athlete "Wren"\n',
  'goals.md': '- #goal low-split by:2026-06-14 "Front split"\n- #goal old by:2026-02-01 "Old goal"\n',
  '2026-02-23.md': '- [x] #session skill 18:30 45min\n- #pain left-wrist 3/10\n',
  '2026-02-26.md': '- [ ] #session skill 18:30 45min\n',
};
const heron = { 'journal.md': '#athlete "Heron"\n', '2026-02-24.md': '- [x] #session skill 45min\n' };
const swift = { 'journal.md': '#athlete "Swift"\n', '2026-02-10.md': '- [x] #session skill 45min\n' };

function roster(athletes: Readonly<Record<string, Notes>>) {
  const journals = Object.entries(athletes).map(([name, notes]) => viewed(notes, '2026-02-25', name));
  const source = { journals, kept: new KeptFacts(), findingsOf: () => [] };
  return rosterNodes(rosterPageData(source, english, 'en'));
}

describe('the view of the athletes', () => {
  const nodes = roster({ Heron: heron, Swift: swift, Wren: wren });

  it('has those who need a word first, each with its reasons and facts, what says nothing left out', () => {
    assert.equal(
      rows(nodes),
      block(`
        (pulse) Wren | Open pain: left-wrist 3/10, noted on February 23, +1
          (pulse) Open pain: left-wrist 3/10, noted on February 23
          (watch) The day of Old goal has passed: February 1
          Last logged | 2 days ago
          This week | 1 of 2 done
          Open pain | left-wrist 3/10
          Next date | Front split: June 14, in 109 days
          (watch) Goals behind | Old goal
        (comment-unresolved) Swift | Nothing logged for 15 days
          (comment-unresolved) Nothing logged for 15 days
          Last logged | 15 days ago
          This week | no sessions
        (pass) Heron | Nothing asks for a word
          Last logged | yesterday
          This week | 1 of 1 done
      `),
    );
  });

  it('leads to what each row speaks of, in the athlete’s own journal', () => {
    const pain = nodeOf(nodes, 'Open pain: left-wrist 3/10, noted on February 23');
    assert.deepEqual(pain.place?.journal, 'memory:/Wren');
    assert.equal(pain.place?.note, '2026-02-23.md');
    assert.equal(nodeOf(nodes, 'Goals behind').goal, 'old');
  });

  it('gives each row an id of its own, and tells a screen reader what its shape tells', () => {
    const all = allNodes(nodes);
    assert.equal(new Set(all.map(({ id }) => id)).size, all.length);
    assert.equal(
      nodeOf(nodes, 'Wren').accessibilityLabel,
      'Wren, Open pain: left-wrist 3/10, noted on February 23, +1',
    );
  });
});
