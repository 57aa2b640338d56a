import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import { goalNodes } from '../../src/editor/views/goal-nodes';
import { allNodes, block, contextOf, english, nodeOf, rows } from './viewed';

const split = [
  '- #goal low-split by:2026-06-14 from:2025-11-10 "Front split low enough for the act"',
  '- #why The act ends in it.',
  '- #metric pelvis-gap from:16cm to:4cm noise:0.8cm',
  '- [x] #step two-blocks by:2026-01-25 metric:pelvis-gap to:13cm',
  '- [ ] #step one-block by:2026-03-08 metric:pelvis-gap to:10cm',
  '- [ ] #step held by:2026-02-01 -- twenty seconds',
  '- #need flexibility 2/week 75min 8/10',
].join('\n');

const shoulders = [
  '- #goal shoulder-opening by:2026-07-31 "Arms behind the ears"',
  '- #metric opening from:155deg to:175deg sides',
  '- [ ] #step both-170 by:2026-04-30 metric:opening to:170deg',
].join('\n');

const logs = {
  '2026-02-16.md': '- #measure low-split pelvis-gap 11cm\n',
  '2026-02-23.md': [
    '- [x] #session flexibility 18:30 75min 8/10 for:low-split',
    '- #measure low-split pelvis-gap 9.8cm',
    '- #measure low-split pelvis-gap 97mm',
  ].join('\n'),
  '2026-02-24.md': [
    '- #measure shoulder-opening opening 166deg side:left',
    '- #measure shoulder-opening opening 171deg side:right',
  ].join('\n'),
  '2026-02-26.md': '- [ ] #session flexibility 18:30 75min 8/10 for:low-split with:coach\n',
  '2026-03-02.md': '- [ ] #session flexibility 18:30 75min 8/10 for:shoulder-opening\n',
};

describe('the view of the goals', () => {
  it('has metrics with their latest reading, steps, the next session and the needs of the week', () => {
    const notes = { 'goals.md': `${split}\n${shoulders}\n`, ...logs };
    assert.equal(
      rows(goalNodes([contextOf(notes, '2026-02-25')])),
      block(`
        (target) Front split low enough for the act | 109 days left
          (graph-line) pelvis-gap | 9.8 cm, target 4 cm, 52% of the way, 3 readings
          (pass) two-blocks | done, pelvis-gap 13 cm
          (star-full) one-block | reached on February 23, not ticked yet, pelvis-gap 10 cm
          (history) held | past its date, February 1
          (calendar) Next: flexibility 18:30 | Thursday, planned, with coach
          (checklist) flexibility this week | 1 of 2 done, 75 of 150 min, 1 open
        (target) Arms behind the ears | 156 days left
          (graph-line) opening | left 166°, right 171°, target 175°, 55% of the way, 2 readings
          (circle-large-outline) both-170 | open, by April 30, opening 170°
          (calendar) Next: flexibility 18:30 | Monday, planned
      `),
    );
  });

  it('says in the tooltip of a metric when it was read, how often, and how sure a reading is', () => {
    const notes = { 'goals.md': split, ...logs };
    assert.equal(
      nodeOf(goalNodes([contextOf(notes, '2026-02-25')]), 'pelvis-gap').tooltip,
      block(`
        pelvis-gap
        9.8 cm on February 23, first 11 cm on February 16, 3 readings, the latest is the mean of 2
        start 16 cm, target 4 cm, 52% of the way
        measuring error ±0.8 cm
      `),
    );
  });

  it('says so when there is no reading, no date, no session, no target reached', () => {
    const notes = { 'goals.md': '- #goal bridge\n- #metric reach to:50cm\n' };
    assert.equal(
      rows(goalNodes([contextOf(notes, '2026-02-25')])),
      block(`
        (target) bridge | no date
          (graph-line) reach | no reading yet, target 50 cm
          (calendar) Next session | none is planned
      `),
    );
  });

  it('never says that the whole way is done before it is', () => {
    const notes = {
      'goals.md': '- #goal hold by:2026-03-01\n- #metric time from:0s to:1000s\n',
      '2026-02-24.md': '- #measure hold time 999s\n',
    };
    const reached = { ...notes, '2026-02-25.md': '- #measure hold time 1000s\n' };
    const description = (journal: Record<string, string>) =>
      nodeOf(goalNodes([contextOf(journal, '2026-02-25')]), 'time').description;
    assert.equal(description(notes), '999 s, target 1,000 s, 99% of the way, 1 reading');
    assert.equal(description(reached), '1,000 s, target 1,000 s, target reached, 2 readings');
  });

  it('tells goals that are past their date, not begun and closed, closed ones last', () => {
    const notes = {
      'goals.md': [
        '- [x] #goal kip by:2026-01-01',
        '- #goal press by:2026-02-24',
        '- #goal bridge by:2026-02-25',
        '- #goal hang by:2026-02-26',
        '- #goal straddle by:2026-09-01 from:2026-03-01',
      ].join('\n'),
    };
    assert.equal(
      goalNodes([contextOf(notes, '2026-02-25')])
        .map((node) => `(${node.icon}) ${node.label} | ${node.description}`)
        .join('\n'),
      block(`
        (history) press | past its date, February 24
        (target) bridge | its date is today
        (target) hang | 1 day left
        (clock) straddle | begins on March 1
        (pass) kip | closed
      `),
    );
  });

  it('never shows the private reason, in no row and no tooltip', () => {
    const notes = { 'goals.md': split, ...logs };
    const nodes = allNodes(goalNodes([contextOf(notes, '2026-02-25')]));
    assert.ok(nodes.length > 5);
    for (const node of nodes) assert.doesNotMatch(JSON.stringify(node), /The act ends in it/);
  });

  it('has one row a journal when there are several, and unique ids', () => {
    const wren = contextOf({ 'goals.md': split, ...logs }, '2026-02-25', english, 'Wren');
    const swift = contextOf({ 'goals.md': split, ...logs }, '2026-02-25', english, 'Swift');
    const nodes = goalNodes([wren, swift]);
    assert.deepEqual(
      nodes.map((node) => [node.label, node.description, node.children.length]),
      [
        ['Wren', '1 goal', 1],
        ['Swift', '1 goal', 1],
      ],
    );
    const ids = allNodes(nodes).map((node) => node.id);
    assert.equal(new Set(ids).size, ids.length);
  });
});
