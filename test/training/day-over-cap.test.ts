import assert from 'node:assert/strict';
import { told } from './journal-from-text';

const over = (rule: string, day: string) =>
  told('day-over-cap', { 'journal.md': rule, '2026-02-26.md': day }, '2026-02-25');

describe('day-over-cap', () => {
  it('stands on the session that takes the day over', () => {
    assert.deepEqual(
      over(
        '- #rule any cap:2h',
        '- [ ] #session strength 18:00 75min\n- [ ] #session skill 19:30-20:30\n- [ ] #session skill 20:30 10min',
      ),
      [
        '2026-02-26.md | warning | #session skill 19:30-20:30 | 2 h 25 min of training on Thursday; the rule caps a day at 2 h',
      ],
    );
  });

  it('lets exactly the cap pass', () => {
    assert.deepEqual(
      over('- #rule any cap:2h', '- [ ] #session strength 75min\n- [ ] #session skill 45min'),
      [],
    );
  });

  it('takes a length from the need or the routine when the session says none, and else adds nothing', () => {
    assert.equal(
      over('- #rule any cap:1h\n- #need strength 1/week 75min', '- [ ] #session strength').length,
      1,
    );
    assert.equal(
      over('- #rule any cap:1h\n- #routine press 75min', '- [ ] #session strength routine:press').length,
      1,
    );
    assert.equal(over('- #rule any cap:1h', '- [ ] #session strength').length, 0);
  });

  it('counts no recovery, nothing skipped, and no other day', () => {
    assert.deepEqual(
      over(
        '- #rule any cap:1h',
        '- [ ] #session strength 60min\n- [ ] #session recovery 60min\n- [ ] #session skill 60min skipped:tired',
      ),
      [],
    );
    assert.deepEqual(
      told(
        'day-over-cap',
        {
          'journal.md': '- #rule any cap:1h',
          '2026-02-25.md': '- [ ] #session strength 60min',
          '2026-02-26.md': '- [ ] #session strength 60min',
        },
        '2026-02-25',
      ),
      [],
    );
  });

  it('may be about a kind only', () => {
    assert.deepEqual(
      over('- #rule flexibility cap:1h', '- [ ] #session flexibility 75min\n- [ ] #session skill 75min'),
      [
        '2026-02-26.md | warning | #session flexibility 75min | 1 h 15 min of flexibility on Thursday; the rule caps a day at 1 h',
      ],
    );
  });
});
