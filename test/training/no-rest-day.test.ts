import assert from 'node:assert/strict';
import { told } from './journal-from-text';

const restless = (notes: Record<string, string>, today: string) => told('no-rest-day', notes, today);

/** Seven days of sessions, the days before `today` ticked. */
function everyDay(today: string, kinds: Readonly<Record<string, string>> = {}): Record<string, string> {
  const days = [23, 24, 25, 26, 27, 28].map((day) => `2026-02-${day}`).concat('2026-03-01');
  return Object.fromEntries(
    days.map((day) => [
      `${day}.md`,
      `- [${day < today ? 'x' : ' '}] #session ${kinds[day] ?? 'conditioning 18:00 45min 5/10'}`,
    ]),
  );
}

describe('no-rest-day', () => {
  it('is information while a day of training could still be left out', () => {
    assert.deepEqual(restless(everyDay('2026-02-28'), '2026-02-28'), [
      '2026-03-01.md | information | #session conditioning 18:00 45min 5/10 | Week 2026-W09 has training on every day, and 1 rest day is asked for; 2 days of training could still be left out',
    ]);
  });

  it('is a warning when none can', () => {
    assert.deepEqual(restless(everyDay('2026-03-02'), '2026-03-01'), [
      '2026-03-01.md | warning | #session conditioning 18:00 45min 5/10 | Week 2026-W09 has training on every day, and 1 rest day is asked for',
    ]);
    assert.equal(restless(everyDay('2026-02-28'), '2026-03-03')[0]?.split(' | ')[1], 'warning');
  });

  it('is met by a day with nothing, with nothing but recovery, or with what was skipped', () => {
    const with28 = (session: string) =>
      restless(everyDay('2026-03-02', { '2026-02-28': session }), '2026-03-01').length;
    assert.equal(with28('recovery'), 0);
    assert.equal(with28('skill skipped:tired'), 0);
    assert.equal(with28('skill moved:2026-02-27'), 0);
    assert.equal(with28('skill'), 1);
  });

  it('asks as many as a rule says', () => {
    const notes = {
      ...everyDay('2026-03-02', { '2026-02-28': 'recovery' }),
      'journal.md': '- #rule rest-day min:2/week',
    };
    assert.deepEqual(restless(notes, '2026-03-01'), [
      '2026-03-01.md | warning | #session conditioning 18:00 45min 5/10 | Week 2026-W09 keeps 1 of the 2 rest days asked for',
    ]);
  });
});
