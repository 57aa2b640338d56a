import assert from 'node:assert/strict';
import { told } from './journal-from-text';

const found = (notes: Record<string, string>) => told('no-time-with-partner', notes, '2026-02-25');

describe('no-time-with-partner', () => {
  it('stands on a session with somebody in the next seven days that says no time', () => {
    assert.deepEqual(found({ '2026-02-28.md': '- [ ] #session skill 45min with:juno -- the small gym' }), [
      '2026-02-28.md | information | #session skill 45min with:juno | The skill session with juno is in 3 days (2026-02-28) and has no time yet; agree on one and write it down',
    ]);
  });

  for (const [name, day, line, words] of [
    ['of today', '2026-02-25', '- [ ] #session skill with:juno', 'is today (2026-02-25)'],
    ['of tomorrow', '2026-02-26', '- [ ] #session skill with:juno', 'is tomorrow (2026-02-26)'],
    ['a week ahead', '2026-03-04', '- [ ] #session skill with:juno', 'is in 7 days (2026-03-04)'],
    ['with several', '2026-02-27', '- [ ] #session skill with:juno,coach', 'with juno, coach is in 2 days'],
    ['without a box', '2026-02-27', '#session skill with:juno', 'is in 2 days'],
  ] as const) {
    it(`says so of a session ${name}`, () => {
      const [only, ...more] = found({ [`${day}.md`]: line });
      assert.deepEqual(more, []);
      assert.ok(only?.includes(words), only);
    });
  }

  for (const [name, day, line] of [
    ['with a time', '2026-02-27', '- [ ] #session skill 18:00 with:juno'],
    ['with nobody', '2026-02-27', '- [ ] #session skill'],
    ['further ahead', '2026-03-05', '- [ ] #session skill with:juno'],
    ['that is done', '2026-02-25', '- [x] #session skill with:juno'],
    ['that is past', '2026-02-24', '- [ ] #session skill with:juno'],
    ['that was skipped', '2026-02-27', '- [ ] #session skill with:juno skipped:ill'],
    ['that was moved', '2026-02-27', '- [ ] #session skill with:juno moved:2026-03-09'],
  ] as const) {
    it(`says nothing of a session ${name}`, () => assert.deepEqual(found({ [`${day}.md`]: line }), []));
  }

  it('follows a session to the day to which it was moved', () => {
    assert.deepEqual(found({ '2026-02-24.md': '- [ ] #session skill with:juno moved:2026-02-27' }), [
      '2026-02-24.md | information | 2026-02-27 | The skill session with juno is in 2 days (2026-02-27) and has no time yet; agree on one and write it down',
    ]);
  });
});
