import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import { dueNodes } from '../../src/editor/views/due-nodes';
import { changedRows } from '../../src/editor/views/node-changes';
import type { ViewNode } from '../../src/editor/views/view-node';
import { weekNodes } from '../../src/editor/views/week-nodes';
import { isoWeekOf } from '../../src/notation/time/iso-week';
import { contextOf } from './viewed';

function node(id: string, description = '', children: readonly ViewNode[] = []): ViewNode {
  return { id, kind: 'text', journal: 'one', label: id, description, children };
}

describe('rows that are shown again', () => {
  const before = [node('a', '', [node('a1'), node('a2')]), node('b', '', [node('b1', '', [node('b11')])])];

  it('are none when nothing changed', () => {
    assert.deepEqual(changedRows(before, structuredClone(before)), []);
  });

  it('are those that changed, as deep as can be', () => {
    const after = [before[0] as ViewNode, node('b', '', [node('b1', '', [node('b11', 'done')])])];
    assert.deepEqual(changedRows(before, after), ['b11']);
  });

  it('are those above rows that came, went or took another place', () => {
    const after = [node('a', '', [node('a2'), node('a1')]), node('b', '', [])];
    assert.deepEqual(changedRows(before, after), ['a', 'b']);
  });

  it('are all of them when that happened at the top', () => {
    const [a, b] = before as [ViewNode, ViewNode];
    assert.equal(changedRows(before, [a, b, node('c')]), undefined);
    assert.equal(changedRows(before, [a]), undefined);
    assert.equal(changedRows(before, [b, a]), undefined);
  });

  it('are those that get rows below them, or lose them', () => {
    const after = [node('a', '', [node('a1', '', [node('a11')]), node('a2')]), before[1] as ViewNode];
    assert.deepEqual(changedRows(before, after), ['a1']);
    assert.deepEqual(changedRows(after, before), ['a1']);
  });

  it('are the day and the volume when a session is ticked in a note', () => {
    const rows = (text: string) => {
      const context = contextOf(
        { '2026-02-24.md': '- [x] #session skill 45min 5/10\n', '2026-02-25.md': text },
        '2026-02-25',
      );
      return weekNodes([{ ...context, findingsEnabled: false }], () => isoWeekOf(context.today));
    };
    const open = rows('- [ ] #session strength 60min 6/10\n');
    const done = rows('- [x] #session strength 60min 6/10\n');
    // The first day was read anew here too, as every note is in this test.
    const labels = changedRows(open, done)?.map((id) => done.find((row) => row.id === id)?.label);
    assert.deepEqual(labels, ['Tuesday, February 24', 'Wednesday, February 25', 'Volume']);
  });

  it('are those above a session that was read anew, so that the menus get the new one', () => {
    const rows = () => dueNodes([contextOf({ '2026-02-25.md': '- [ ] #session skill\n' }, '2026-02-25')]);
    const first = rows();
    assert.deepEqual(changedRows(first, rows()), [first[0]?.id]);
    assert.deepEqual(changedRows(first, first), []);
  });
});
