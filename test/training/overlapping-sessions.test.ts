import assert from 'node:assert/strict';
import { told } from './journal-from-text';

const overlaps = (notes: Record<string, string>) => told('overlapping-sessions', notes, '2026-02-25');

describe('overlapping-sessions', () => {
  it('stands on the later of two sessions that ask for the same time', () => {
    assert.deepEqual(
      overlaps({ '2026-02-26.md': '- [ ] #session strength 18:00 75min\n- [ ] #session skill 18:45-19:45' }),
      [
        "2026-02-26.md | warning | #session skill 18:45-19:45 | 30 min of this session are also Thursday's strength session; a body is in one place at a time",
      ],
    );
  });

  it('lets a session start at the minute when another ends', () => {
    assert.deepEqual(
      overlaps({ '2026-02-26.md': '- [ ] #session strength 18:00 45min\n- [ ] #session skill 18:45-19:45' }),
      [],
    );
  });

  it('finds them in two notes of a day, and past midnight', () => {
    assert.equal(
      overlaps({
        '2026-02-26.md': '- [ ] #session strength 18:00 60min',
        '2026-02-26 evening.md': '- [ ] #session skill 18:30 60min',
      }).length,
      1,
    );
    assert.equal(
      overlaps({
        '2026-03-01.md': '- [ ] #session skill 23:00-01:00',
        '2026-03-02.md': '- [ ] #session strength 00:30 60min',
      }).length,
      1,
      'from Sunday into the Monday of the next week',
    );
  });

  it('finds two that start together when nothing says how long they last', () => {
    assert.deepEqual(
      overlaps({ '2026-02-26.md': '- [ ] #session strength 18:00\n- [ ] #session skill 18:00' }),
      [
        "2026-02-26.md | warning | #session skill 18:00 | This session starts together with Thursday's strength session; a body is in one place at a time",
      ],
    );
  });

  it('knows nothing of sessions without a time, skipped ones, or moved ones', () => {
    assert.deepEqual(
      overlaps({
        '2026-02-26.md': [
          '- [ ] #session strength 18:00 75min',
          '- [ ] #session skill 75min',
          '- [ ] #session flexibility 18:00 skipped:ill',
          '- [ ] #session conditioning 18:00 moved:2026-02-28',
        ].join('\n'),
      }),
      [],
    );
  });
});
