import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import { type IsoDate, parseIsoDate } from '../../../src/notation/time/iso-date';
import type { IsoWeek } from '../../../src/notation/time/iso-week';
import { askedOfWeek } from '../../../src/training/block/asked-in-week';
import { checkJournal } from '../../../src/training/check-journal';
import { fillMessage } from '../../../src/training/finding';
import { indexOf } from '../../journal/index-of';

const today = parseIsoDate('2026-03-02') as IsoDate;

const goals = `- #goal low-split by:2026-06-14 "Split"
- #need flexibility 2/week 75min 8/10
- #goal back-bend by:2026-09-01 "Bend"
- #need flexibility 1/week 60min
- #need strength 2/week 60min 7/10
`;

const block = (rows: string) => `#block

| week     | flexibility | strength  | notes    |
| -------- | ----------- | --------- | -------- |
${rows}`;

/** What the needs of a journal with this block ask of a week, in short. */
function asked(rows: string, week: string): string[] {
  const { plan } = indexOf({ 'goals.md': goals, 'block.md': block(rows) });
  return plan.needs.map((need) => {
    const { perWeek, length, rating } = askedOfWeek(plan, need, week as IsoWeek);
    return `${need.kind} ${perWeek.count} x ${length?.minutes ?? '-'} ${rating ?? '-'}`;
  });
}

describe('what a need asks of a week of a block', () => {
  it('is what its line says in weeks without a row, and for kinds without a column', () => {
    const own = ['flexibility 2 x 75 8', 'flexibility 1 x 60 -', 'strength 2 x 60 7'];
    assert.deepEqual(asked('| 2026-W11 | 3 x 50min | 2 x 45min | building |\n', '2026-W10'), own);
    const { plan } = indexOf({
      'goals.md': goals,
      'block.md': '#block\n\n| week |\n| --- |\n| 2026-W10 |\n',
    });
    assert.ok(plan.needs.every((need) => askedOfWeek(plan, need, '2026-W10' as IsoWeek) === need));
  });

  it('is its share of the cell: sessions in turn, minutes as the lengths are asked', () => {
    assert.deepEqual(asked('| 2026-W10 | 3 x 70min | 2 x 45min | building |\n', '2026-W10'), [
      'flexibility 2 x 75 8',
      'flexibility 1 x 60 -',
      'strength 2 x 45 7',
    ]);
    assert.deepEqual(asked('| 2026-W10 | 2 x 54min | 90min | building |\n', '2026-W10'), [
      'flexibility 1 x 60 8',
      'flexibility 1 x 48 -',
      'strength 2 x 45 7',
    ]);
  });

  it('gives more sessions than are asked to the nearest goal, and none where the cell says none', () => {
    assert.deepEqual(asked('| 2026-W10 | 5 x 69min | - | building |\n', '2026-W10'), [
      'flexibility 4 x 71 8',
      'flexibility 1 x 57 -',
      'strength 0 x - 7',
    ]);
  });

  it('is nothing hard in a lighter week', () => {
    assert.deepEqual(asked('| 2026-W10 | 3 x 35min | 2 x 35min | Lighter week |\n', '2026-W10'), [
      'flexibility 2 x 37 6',
      'flexibility 1 x 30 6',
      'strength 2 x 35 6',
    ]);
  });

  it('never asks for more minutes than the cell holds', () => {
    for (let minutes = 1; minutes <= 240; minutes += 1) {
      const all = asked(`| 2026-W10 | ${minutes}min | 3 x ${minutes}min | building |\n`, '2026-W10');
      const total = (kind: string) =>
        all
          .filter((one) => one.startsWith(kind))
          .reduce((sum, one) => {
            const [, count, length] = /(\d+) x (\d+)/.exec(one) ?? [];
            return sum + Number(count ?? 0) * Number(length ?? 0);
          }, 0);
      assert.ok(total('flexibility') <= minutes, `${minutes}: ${all.join(', ')}`);
      assert.ok(total('strength') <= 3 * minutes, `${minutes}: ${all.join(', ')}`);
    }
  });

  it('is what the week is held against: fewer or shorter sessions of a block are not missing', () => {
    const session = '- [ ] #session strength 18:00 35min 6/10\n';
    const notes = {
      'goals.md': '- #need strength 3/week 60min 7/10\n',
      '2026-03-02.md': session,
      '2026-03-04.md': session,
      '2026-03-06.md': `${session}- [ ] #session recovery 12:00 30min 2/10\n`,
    };
    const under = (all: Readonly<Record<string, string>>) =>
      checkJournal(indexOf(all), { today, zone: 'UTC' })
        .filter(({ code }) => code === 'week-under-minimum')
        .map(({ message }) => fillMessage(message));
    assert.equal(under(notes).length, 1);
    const light =
      '#block\n\n| week | strength | notes |\n| --- | --- | --- |\n| 2026-W10 | 3 x 35min | lighter |\n';
    assert.deepEqual(under({ ...notes, 'block.md': light }), []);
    assert.equal(under({ ...notes, 'block.md': light.replace('3 x', '4 x') }).length, 1);
  });
});

describe('a column of a block', () => {
  it('that no need asks for is told of on its header', () => {
    const note = block('| 2026-W10 | 3 x 70min | 2 x 45min | |\n').replace('| strength ', '| strenght ');
    const found = checkJournal(indexOf({ 'goals.md': goals, 'block.md': note }), { today, zone: 'UTC' })
      .filter(({ code }) => code === 'unreadable-field')
      .map(({ message, range }) => [note.slice(range.start, range.end), fillMessage(message)]);
    assert.deepEqual(found, [
      [
        'strenght',
        'No need of this journal asks for strenght, so that nothing is planned for it; did you mean strength?',
      ],
    ]);
  });
});
