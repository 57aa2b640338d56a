import assert from 'node:assert/strict';
import { findingsIn, told } from './journal-from-text';

/** Half a centimetre a week, a little more in some weeks. */
const readings = (side = '') => ({
  '2026-01-26.md': `- #measure low-split gap 14cm ${side}\n`,
  '2026-02-02.md': `- #measure low-split gap 13.4cm ${side}\n`,
  '2026-02-09.md': `- #measure low-split gap 13.1cm ${side}\n`,
  '2026-02-16.md': `- #measure low-split gap 12.4cm ${side}\n`,
  '2026-02-23.md': `- #measure low-split gap 12cm ${side}\n`,
});
const goal = (by: string, to = '0cm') =>
  `- #goal low-split ${by}\n- #why x\n- #metric gap from:14cm to:${to}`;

const paces = (notes: Readonly<Record<string, string>>, today = '2026-02-25') =>
  told('goal-pace', notes, today);

describe('goal-pace', () => {
  it('stands on the date of a goal that needs more than the readings show, with both paces and the arrival', () => {
    assert.deepEqual(paces({ ...readings(), 'goals.md': goal('by:2026-03-31') }), [
      'goals.md | information | 2026-03-31 | gap needs -2.5 cm a week to be at 0 cm on 2026-03-31; the readings of 5 days show -0.7 cm to -0.3 cm; at that pace it is there between 2026-06-20 and 2026-12-12',
    ]);
  });

  it('is silent while the forecast may still reach the date, or there is none', () => {
    assert.deepEqual(paces({ ...readings(), 'goals.md': goal('by:2026-08-31') }), []);
    assert.deepEqual(paces({ ...readings(), 'goals.md': goal('') }), []);
  });

  it('is told when the readings may as well stand still and the goal needs more than they allow', () => {
    const still = Object.fromEntries(
      [14, 13.9, 14.1, 14, 13.9, 14].map((value, i) => [
        `2026-0${i < 1 ? '1-19' : i < 2 ? '1-26' : `2-${String(2 + 7 * (i - 2)).padStart(2, '0')}`}.md`,
        `- #measure low-split gap ${value}cm\n`,
      ]),
    );
    const [line, ...more] = paces({ ...still, 'goals.md': goal('by:2026-03-31') });
    assert.deepEqual(more, []);
    assert.match(
      line ?? '',
      /gap needs -2\.9 cm a week .* the readings of 6 days show -?[\d.]+ cm to [\d.]+ cm$/,
    );
  });

  it('needs readings of five days', () => {
    const { '2026-01-26.md': _, ...four } = readings();
    assert.deepEqual(paces({ ...four, 'goals.md': goal('by:2026-03-31') }), []);
  });

  it('looks at goals that are open today', () => {
    for (const closed of ['- [x] #goal', '- #goal'] as const) {
      const from = closed === '- #goal' ? ' from:2026-03-01' : '';
      const lines = `${closed} low-split by:2026-03-31${from}\n- #metric gap from:14cm to:0cm`;
      assert.deepEqual(paces({ ...readings(), 'goals.md': lines }), []);
    }
    assert.deepEqual(paces({ ...readings(), 'goals.md': goal('by:2026-02-24') }), []);
  });

  it('is told of the side that has further to go, and of no cold readings beside more warm ones', () => {
    const notes: Record<string, string> = { 'goals.md': goal('by:2026-03-31') };
    for (const [path, line] of Object.entries(readings('side:left warm'))) {
      const right = line.replace('side:left', 'side:right').replace(/gap 1(\d)/, 'gap $1');
      notes[path] = line + right + (path < '2026-02-20' ? line.replace('warm', 'cold') : '');
    }
    const found = findingsIn(notes, '2026-02-25').filter(({ code }) => code === 'goal-pace');
    assert.deepEqual(
      found.map(({ facts }) => [facts.metric, facts.side, facts.daysMeasured]),
      [['gap', 'left', 5]],
    );
    assert.deepEqual(found[0]?.remedies, ['move-goal-date']);
    assert.deepEqual(
      found[0]?.related.map(({ note }) => note),
      ['goals.md'],
    );
  });
});
