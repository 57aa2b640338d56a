import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import { weekStatus } from '../../src/editor/week-status';
import { block, contextOf, english } from './viewed';

const notes = {
  '2026-02-22.md': '- [x] #session strength 40min\n',
  '2026-02-23.md': '- [x] #session flexibility 18:30 75min 8/10\n',
  '2026-02-24.md': '- [ ] #session skill 18:30 45min\n',
  '2026-02-25.md': '- [x] #session recovery 07:00 30min 2/10\n- [ ] #session hoop 18:00 75min\n',
  '2026-02-27.md': '- [ ] #session skill 18:00 45min skipped:travel\n',
};

describe("this week's done of planned", () => {
  it('counts the sessions that stand in the week of today', () => {
    assert.deepEqual(weekStatus([contextOf(notes, '2026-02-25')]), {
      text: '$(check) 2 of 4 this week',
      tooltip: block(`
        Ilka: 2 of 4 sessions done in week 2026-W09, 105 of 225 min
        Today: recovery 07:00 (done 2/10), hoop 18:00 (planned)
        Overdue: 1
      `),
      accessibilityLabel: 'Training: 2 of 4 sessions done this week',
    });
  });

  it('adds several journals up, and says them one by one', () => {
    const other = { '2026-02-24.md': '- [x] #session skill 18:30 45min\n' };
    const status = weekStatus([
      contextOf(notes, '2026-02-25'),
      contextOf(other, '2026-02-25', english, 'Wren'),
    ]);
    assert.equal(status?.text, '$(check) 3 of 5 this week');
    assert.equal(
      status?.tooltip,
      block(`
        Ilka: 2 of 4 sessions done in week 2026-W09, 105 of 225 min
        Wren: 1 of 1 sessions done in week 2026-W09, 45 of 45 min
      `),
    );
  });

  it('says when nothing stands in the week, and nothing at all without a journal', () => {
    const status = weekStatus([contextOf({}, '2026-02-25')]);
    assert.equal(status?.text, '$(check) no sessions this week');
    assert.equal(status?.tooltip, 'Ilka: no sessions in week 2026-W09\nToday: no session');
    assert.equal(weekStatus([]), undefined);
  });
});
