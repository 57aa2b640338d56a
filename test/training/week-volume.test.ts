import assert from 'node:assert/strict';
import { weekVolume } from '../../src/training/week-volume';
import { date, week } from './dates';
import { journalFromNotes } from './journal-from-text';

describe('the volume of a week', () => {
  it('is told for each need, nearest goal first, in sessions and minutes', () => {
    const journal = journalFromNotes({
      'plan.md': [
        '- #goal bridge by:2026-09-30',
        '- #need flexibility 1/week',
        '- #goal low-split by:2026-06-14',
        '- #need flexibility 2/week 60min',
        '- #need strength 90min/week',
      ].join('\n'),
      '2026-02-23.md': '- [x] #session flexibility',
      '2026-02-24.md': '- [x] #session strength 45min',
      '2026-02-26.md': '- [ ] #session flexibility 75min\n- [ ] #session skill 30min',
    });
    assert.deepEqual(
      weekVolume(journal, week('2026-W09'), date('2026-02-25')).map(({ need, asked, done, standing }) => [
        `${need.goal} ${need.kind}`,
        asked,
        done,
        standing,
      ]),
      [
        ['low-split flexibility', { count: 2 }, { sessions: 1, minutes: 60 }, { sessions: 2, minutes: 135 }],
        ['low-split strength', { minutes: 90 }, { sessions: 1, minutes: 45 }, { sessions: 1, minutes: 45 }],
        ['bridge flexibility', { count: 1 }, { sessions: 0, minutes: 0 }, { sessions: 0, minutes: 0 }],
      ],
    );
  });
});
