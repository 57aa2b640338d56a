import assert from 'node:assert/strict';
import { findingsIn, told } from './journal-from-text';

const missing = (notes: Record<string, string>, today = '2026-02-25') =>
  told('no-recovery-session', notes, today);

const training = {
  '2026-02-23.md': '- [x] #session strength 18:00 60min 6/10',
  '2026-02-24.md': '- [x] #session skill 18:00 60min 5/10 -- mounts',
};

describe('no-recovery-session', () => {
  it('stands on the last session of the week, as information while a day can still hold it', () => {
    assert.deepEqual(missing(training), [
      '2026-02-24.md | information | #session skill 18:00 60min 5/10 | Week 2026-W09 holds no recovery session, and 1 is asked for; there is still room on 5 days',
    ]);
  });

  it('is a warning when the week is over or its last days are taken', () => {
    assert.deepEqual(missing(training, '2026-03-02'), [
      '2026-02-24.md | warning | #session skill 18:00 60min 5/10 | Week 2026-W09 holds no recovery session, and 1 is asked for; the week is over',
    ]);
    assert.deepEqual(missing({ ...training, 'trip.md': '- #busy 2026-02-25..2026-03-01' }), [
      '2026-02-24.md | warning | #session skill 18:00 60min 5/10 | Week 2026-W09 holds no recovery session, and 1 is asked for; no day is left for it',
    ]);
  });

  it('is met by recovery, or by a kind that is like it, unless it was skipped', () => {
    const and = (text: string) =>
      missing({ 'journal.md': '- #kind massage like:recovery', ...training, '2026-03-01.md': text });
    assert.deepEqual(and('- [ ] #session recovery'), []);
    assert.deepEqual(and('- [ ] #session massage'), []);
    assert.equal(and('- [ ] #session recovery skipped:ill').length, 1);
    assert.equal(and('- [ ] #session conditioning').length, 1);
  });

  it('asks as many as a rule says', () => {
    assert.deepEqual(
      missing({
        'journal.md': '- #rule recovery min:2/week',
        ...training,
        '2026-02-26.md': '- [ ] #session recovery',
      }),
      [
        '2026-02-26.md | information | #session recovery | Week 2026-W09 holds 1 of the 2 recovery sessions asked for; there is still room on 4 days',
      ],
    );
    assert.deepEqual(missing({ 'journal.md': '- #rule recovery min:0/week', ...training }), []);
  });

  it('asks nothing of a week without training', () => {
    assert.deepEqual(
      missing({ '2026-02-23.md': '- #sore hips 4/10\n- [ ] #session strength skipped:ill' }),
      [],
    );
  });

  it('can be mended while the week lasts', () => {
    const [now] = findingsIn({ '2026-02-25.md': '- [ ] #session strength 6/10' }, '2026-02-25');
    assert.deepEqual(now?.remedies, ['add-recovery-session', 'turn-into-recovery']);
    const [later] = findingsIn({ '2026-02-25.md': '- [x] #session strength 6/10' }, '2026-03-04');
    assert.equal(later?.code, 'no-recovery-session');
    assert.deepEqual(later.remedies, []);
  });
});
