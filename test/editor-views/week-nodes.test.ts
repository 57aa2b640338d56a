import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import { weekNodes } from '../../src/editor/views/week-nodes';
import { isoWeekOf, parseIsoWeek } from '../../src/notation/time/iso-week';
import { allNodes, block, contextOf, type Notes, nodeOf, rows } from './viewed';

/** The rows of one week as they are on 2026-02-25, a Wednesday in week 9. */
function shown(notes: Notes, week = '2026-W09') {
  const number = parseIsoWeek(week);
  assert(number);
  return weekNodes([contextOf(notes, '2026-02-25')], () => number);
}

const plan = {
  'goals.md': [
    '- #goal low-split by:2026-06-14 "Low split"',
    '- #why I want it.',
    '- #metric gap from:16cm to:4cm',
    '- #need flexibility 2/week 75min 8/10',
    '- #need strength 120min/week',
  ].join('\n'),
  'rules.md': '- #need recovery 1/week 45min 2/10\n',
};

const week = {
  ...plan,
  '2026-02-23.md': '- [x] #session flexibility 18:30 75min 8/10\n',
  '2026-02-24.md': '- [x] #session recovery 20:00 45min\n',
  '2026-02-25.md': '- [ ] #session strength 18:30 90min 6/10 moved:2026-02-26\n',
  '2026-02-27.md': '- [ ] #session skill 18:00 45min skipped:travel\n',
};

describe('the view of the week', () => {
  it('has seven days with their sessions, and the volume against what is asked', () => {
    assert.equal(
      rows(shown(week).slice(0, 8)),
      block(`
        Monday, February 23 | 1 of 1 done
          (pass) flexibility 18:30 | done 8/10
        Tuesday, February 24 | 1 of 1 done, rest day
          (pass) recovery 20:00 | done
        Wednesday, February 25 | today, rest day
          (arrow-right) strength 18:30 | moved to Thursday
        Thursday, February 26 | 1 session
          (circle-large-outline) strength 18:30 | planned
        Friday, February 27 | rest day
          (circle-slash) skill 18:00 | skipped (travel)
        Saturday, February 28 | rest day
        Sunday, March 1 | rest day
        Volume | 2 of 3 sessions done, 120 of 210 min
          (checklist) flexibility for low-split | 1 of 2 done, 75 of 150 min, 1 to plan
          (checklist) strength for low-split | 0 of 120 min done, 1 open, 30 min to plan
          (pass) recovery | 1 of 1 done, 45 of 45 min
      `),
    );
  });

  it('says of a past week what is missing instead of what is to plan', () => {
    const notes = { ...plan, '2026-02-16.md': '- [ ] #session flexibility 18:30 75min 8/10\n' };
    const volume = nodeOf(shown(notes, '2026-W08'), 'flexibility for low-split');
    assert.equal(volume.description, '0 of 2 done, 0 of 150 min, 1 overdue, 1 missing');
  });

  it('does not call the days of an unwritten week rest', () => {
    assert.equal(
      rows(shown({}, '2026-W12')),
      block(`
        Monday, March 16
        Tuesday, March 17
        Wednesday, March 18
        Thursday, March 19
        Friday, March 20
        Saturday, March 21
        Sunday, March 22
        Volume | no sessions
      `),
    );
  });

  it('holds what is found in the week, worst in words and shape, each leading to its place', () => {
    const notes = {
      '2026-02-24.md': '- [x] #session flexibility 18:30-19:45 8/10\n',
      '2026-02-25.md': '- [ ] #session flexibility 14:45 75min 8/10\n',
    };
    const [finding] = nodeOf(shown(notes), 'Findings').children.filter((node) => node.icon === 'warning');
    assert.match(finding?.label ?? '', /^19 h .*48 h/);
    assert.match(finding?.accessibilityLabel ?? '', /^warning: 19 h/);
    assert.equal(finding?.place?.note, '2026-02-25.md');
  });

  it('leaves findings out when they are switched off', () => {
    const notes = { '2026-02-24.md': '- [ ] #session flexibility 18:30\n' };
    const on = contextOf(notes, '2026-02-25');
    const labels = (context: typeof on) =>
      weekNodes([context], () => isoWeekOf(context.today)).map((node) => node.label);
    assert.ok(labels(on).includes('Findings'));
    assert.ok(!labels({ ...on, findingsEnabled: false }).includes('Findings'));
  });

  it('opens the note of a day that has one', () => {
    const nodes = shown(week);
    assert.equal(nodeOf(nodes, 'Monday, February 23').place?.note, '2026-02-23.md');
    assert.equal(nodeOf(nodes, 'Saturday, February 28').place, undefined);
  });

  it('has unique ids', () => {
    const ids = allNodes(shown(week)).map((node) => node.id);
    assert.equal(new Set(ids).size, ids.length);
  });
});
