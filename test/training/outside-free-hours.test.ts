import assert from 'node:assert/strict';
import { told } from './journal-from-text';

/** What is told of a session on Thursday 2026-02-26. */
const outside = (hours: string, session: string, today = '2026-02-25') =>
  told('outside-free-hours', { 'journal.md': hours, '2026-02-26.md': session }, today).map(
    (line) => line.split(' | ')[3],
  );

describe('outside-free-hours', () => {
  it('stands on a planned session that is not within the free hours of its weekday', () => {
    assert.deepEqual(
      told(
        'outside-free-hours',
        {
          'journal.md': '- #free thu 18:00-21:00',
          '2026-02-26.md': '- [ ] #session skill 20:30 60min -- late',
        },
        '2026-02-25',
      ),
      [
        '2026-02-26.md | warning | #session skill 20:30 60min | Thursday is free 18:00-21:00; the session is at 20:30-21:30',
      ],
    );
  });

  it('lets a session pass that fills them exactly, or of which only the start is known', () => {
    assert.deepEqual(outside('- #free thu 18:00-21:00', '- [ ] #session skill 18:00-21:00'), []);
    assert.deepEqual(outside('- #free thu 18:00-21:00', '- [ ] #session skill 20:59'), []);
    assert.deepEqual(outside('- #free thu 18:00-21:00', '- [ ] #session skill 07:00'), [
      'Thursday is free 18:00-21:00; the session starts at 07:00',
    ]);
  });

  it('adds up the lines of a weekday', () => {
    const hours = '- #free thu 18:00-19:00\n- #free tue thu 19:00-21:00\n- #free thu 07:00-08:00';
    assert.deepEqual(outside(hours, '- [ ] #session skill 18:30 60min'), []);
    assert.deepEqual(outside(hours, '- [ ] #session skill 12:00 60min'), [
      'Thursday is free 07:00-08:00, 18:00-21:00; the session is at 12:00-13:00',
    ]);
  });

  it('reads hours past midnight into the next day', () => {
    assert.deepEqual(outside('- #free wed 22:00-02:00', '- [ ] #session skill 00:30 60min'), []);
    assert.deepEqual(outside('- #free thu 22:00-02:00', '- [ ] #session skill 23:30 60min'), []);
    assert.deepEqual(outside('- #free thu 22:00-02:00', '- [ ] #session skill 00:30 60min'), [
      'Thursday is free 22:00-02:00; the session is at 00:30-01:30',
    ]);
  });

  it('asks a weekday with hours of a session without a time', () => {
    assert.deepEqual(outside('- #free thu 18:00-21:00', '- [ ] #session skill'), []);
    assert.deepEqual(outside('- #free tue 18:00-21:00', '- [ ] #session skill'), [
      'Thursday has no free hours',
    ]);
  });

  it('matches place and company, where both say one', () => {
    const hours = '- #free thu 18:00-21:00 where:studio\n- #free thu 09:00-10:00 with:coach';
    assert.deepEqual(outside(hours, '- [ ] #session skill 18:00 60min where:studio'), []);
    assert.deepEqual(outside(hours, '- [ ] #session skill 18:00 60min'), []);
    assert.deepEqual(outside(hours, '- [ ] #session skill 09:00 60min where:studio with:coach'), []);
    assert.deepEqual(outside(hours, '- [ ] #session skill 18:00 60min where:park'), [
      'Thursday is free 09:00-10:00; the session is at 18:00-19:00',
    ]);
    assert.deepEqual(outside(hours, '- [ ] #session skill where:park with:partner'), [
      'Thursday has no free hours for this place or company',
    ]);
  });

  it('says nothing in a journal without free or busy hours', () => {
    assert.deepEqual(outside('', '- [ ] #session skill 03:00'), []);
  });

  it('leaves alone what is done or past', () => {
    assert.deepEqual(outside('- #free tue 18:00-21:00', '- [x] #session skill 07:00'), []);
    assert.deepEqual(outside('- #free tue 18:00-21:00', '- [ ] #session skill 07:00', '2026-02-27'), []);
  });

  describe('busy time', () => {
    it('takes whole days, with or without free hours', () => {
      assert.deepEqual(outside('- #busy 2026-02-26', '- [ ] #session skill'), [
        '2026-02-26 is marked as busy',
      ]);
      assert.deepEqual(
        outside('- #free thu 18:00-21:00\n- #busy 2026-02-24..2026-02-26', '- [ ] #session skill 18:00'),
        ['2026-02-26 is marked as busy'],
      );
      assert.deepEqual(outside('- #busy 2026-02-27', '- [ ] #session skill 18:00'), []);
    });

    it('takes hours of a day, and those past midnight', () => {
      const hours = '- #busy 2026-02-26 14:00-17:00';
      assert.deepEqual(outside(hours, '- [ ] #session skill 16:30 60min'), [
        'Thursday 14:00-17:00 is marked as busy; the session is at 16:30-17:30',
      ]);
      assert.deepEqual(outside(hours, '- [ ] #session skill 17:00 60min'), []);
      assert.deepEqual(outside(hours, '- [ ] #session skill 13:00 60min'), []);
      assert.deepEqual(outside(hours, '- [ ] #session skill'), []);
      assert.equal(outside('- #busy 2026-02-25 22:00-02:00', '- [ ] #session skill 01:00 60min').length, 1);
      assert.equal(outside('- #busy 2026-02-27', '- [ ] #session skill 23:30 60min').length, 1);
    });
  });
});
