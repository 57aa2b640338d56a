import assert from 'node:assert/strict';
import { findingsIn, told } from './journal-from-text';

const overdue = (notes: Record<string, string>) => told('session-overdue', notes, '2026-02-25');

describe('session-overdue', () => {
  it('stands on a session of a past day whose box is empty', () => {
    assert.deepEqual(overdue({ '2026-02-23.md': '- [ ] #session flexibility 18:30 75min -- hips' }), [
      '2026-02-23.md | warning | #session flexibility 18:30 75min | The flexibility session of 2026-02-23 was planned 2 days ago; tick it, skip it with a reason, or move it',
    ]);
    assert.match(
      overdue({ '2026-02-24.md': '- [ ] #session flexibility' })[0] ?? '',
      /was planned for yesterday; tick it/,
    );
  });

  it('takes a session without a box for one with an empty box', () => {
    assert.equal(overdue({ '2026-02-23.md': '#session flexibility' }).length, 1);
  });

  it('leaves alone what is of today, done, skipped or moved on', () => {
    assert.deepEqual(
      overdue({
        '2026-02-25.md': '- [ ] #session flexibility 06:00',
        '2026-02-24.md': '- [x] #session flexibility',
        '2026-02-23.md': '- [ ] #session flexibility skipped:ill\n- [ ] #session skill moved:2026-02-27',
      }),
      [],
    );
  });

  it('finds a session that was moved to a day that is past as well, and not written there', () => {
    assert.deepEqual(overdue({ '2026-02-20.md': '- [ ] #session skill 18:00 moved:2026-02-23' }), [
      '2026-02-20.md | warning | 2026-02-23 | The skill session of 2026-02-23 was planned 2 days ago; tick it, skip it with a reason, or move it',
    ]);
  });

  it('can be ticked, skipped or moved', () => {
    const found = findingsIn({ '2026-02-20.md': '- [ ] #session skill' }, '2026-02-21');
    assert.deepEqual(found.find((one) => one.code === 'session-overdue')?.remedies, [
      'tick-as-done',
      'mark-skipped',
      'move-to-legal-day',
    ]);
  });
});
