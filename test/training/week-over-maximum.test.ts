import assert from 'node:assert/strict';
import { told } from './journal-from-text';

const above = (notes: Record<string, string>) => told('week-over-maximum', notes, '2026-02-25');

const skills = {
  '2026-02-23.md': '- [x] #session skill 18:00 60min 5/10',
  '2026-02-25.md': '- [ ] #session skill 18:00 60min 5/10',
  '2026-02-27.md': '- [ ] #session skill 18:00 60min 5/10 -- mounts',
  '2026-02-28.md': '- [ ] #session skill 18:00 60min 5/10',
};

describe('week-over-maximum', () => {
  it('stands once, on the first session above what a rule allows, and counts all of the week', () => {
    assert.deepEqual(above({ 'journal.md': '- #rule skill max:2/week', ...skills }), [
      '2026-02-27.md | warning | #session skill 18:00 60min 5/10 | Week 2026-W09 holds 4 skill sessions; the rule allows 2',
    ]);
    assert.deepEqual(above({ 'journal.md': '- #rule skill max:4/week', ...skills }), []);
  });

  it('counts each week for itself', () => {
    assert.deepEqual(
      above({
        'journal.md': '- #rule skill max:2/week',
        '2026-02-20.md': '- [x] #session skill',
        '2026-02-22.md': '- [x] #session skill',
        '2026-02-23.md': '- [x] #session skill',
        '2026-02-24.md': '- [x] #session skill',
      }),
      [],
    );
  });

  it('leaves out what was skipped or moved to another week', () => {
    assert.deepEqual(
      above({
        'journal.md': '- #rule skill max:2/week',
        ...skills,
        '2026-02-25.md': '- [ ] #session skill 18:00 skipped:work',
        '2026-02-28.md': '- [ ] #session skill 18:00 moved:2026-03-03',
      }),
      [],
    );
  });

  it('is told for a need, which counts the sessions that count for it', () => {
    assert.deepEqual(
      above({
        'goals.md': [
          '- #goal hoop-drop by:2026-06-14',
          '- #need skill 1/week max:1/week',
          '- #goal handstand by:2026-07-14',
          '- #need skill 2/week',
        ].join('\n'),
        '2026-02-23.md': '- [x] #session skill for:hoop-drop',
        '2026-02-25.md': '- [ ] #session skill for:handstand',
        '2026-02-27.md': '- [ ] #session skill for:hoop-drop',
      }),
      [
        '2026-02-27.md | warning | #session skill for:hoop-drop | Week 2026-W09 holds 2 skill sessions; the need allows 1',
      ],
    );
  });

  it('counts minutes where the maximum is in minutes', () => {
    assert.deepEqual(above({ 'journal.md': '- #rule skill max:150min/week', ...skills }), [
      '2026-02-27.md | warning | #session skill 18:00 60min 5/10 | Week 2026-W09 holds 4 h of skill; the rule allows 2 h 30 min',
    ]);
  });

  it('knows every subject a rule can have', () => {
    const one = (rule: string, sessions: string) =>
      above({
        'journal.md': [rule, '- #routine press regions:shoulders', '- #kind duo like:skill'].join('\n'),
        'goals.md': '- #goal handstand by:2026-07-14',
        '2026-02-23.md': sessions,
      }).map((line) => line.split(' | ')[3]);
    assert.deepEqual(
      one('- #rule hard max:1/week', '- [x] #session skill 8/10\n- [x] #session strength 7/10'),
      ['Week 2026-W09 holds 2 hard sessions; the rule allows 1'],
    );
    assert.deepEqual(one('- #rule any max:1/week', '- [x] #session skill 1/10\n- [x] #session recovery'), []);
    assert.deepEqual(one('- #rule any max:1/week', '- [x] #session skill 1/10\n- [x] #session strength'), [
      'Week 2026-W09 holds 2 training sessions; the rule allows 1',
    ]);
    assert.deepEqual(one('- #rule shoulders max:0/week', '- [x] #session skill 1/10 routine:press'), [
      'Week 2026-W09 holds 1 session that loads shoulders; the rule allows 0',
    ]);
    assert.deepEqual(one('- #rule handstand max:0/week', '- [x] #session skill for:handstand'), [
      'Week 2026-W09 holds 1 session for handstand; the rule allows 0',
    ]);
    assert.deepEqual(one('- #rule skill max:1/week', '- [x] #session duo\n- [x] #session skill 18:00'), [
      'Week 2026-W09 holds 2 skill sessions; the rule allows 1',
    ]);
    assert.deepEqual(one('- #rule duo max:0/week', '- [x] #session skill'), []);
  });
});
