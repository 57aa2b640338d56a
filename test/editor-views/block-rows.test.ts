import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import { blockRows, tickedAtFirst } from '../../src/editor/block/block-rows';
import { wordsOf } from '../../src/editor/words';
import { isoWeekOf } from '../../src/notation/time/iso-week';
import { openBlocks, planBlockAgain, planNewBlock } from '../../src/planning/block';
import { defaultBlockSettings } from '../../src/planning/block/block-settings';
import { fillMessage } from '../../src/training/finding';
import { date, journalOf, type Notes } from '../planning/journal-of';

const options = { today: date('2026-03-08'), zone: 'UTC', settings: defaultBlockSettings };
const words = wordsOf('en', fillMessage);

const notes: Notes = {
  'needs.md': '- #need flexibility 2/week 60min 6/10\n- #rule recovery min:0/week\n',
  'hours.md': '- #free tue fri 18:00-20:00\n- #event 2026-04-04 "Show"\n',
  '2026-02-24.md': '- [x] #session flexibility 18:00 60min\n',
  '2026-02-27.md': '- [x] #session flexibility 18:00 60min\n',
};

/** Rows in short: icon, label, description, detail. */
function inShort(rows: ReturnType<typeof blockRows>): string[] {
  return rows.map(({ is, icon, label, description, detail }) =>
    [is === 'heading' ? '--' : icon, label, description, detail].filter(Boolean).join(' | '),
  );
}

describe('the rows of a block', () => {
  const journal = journalOf(notes);
  const [event] = journal.plan.events;
  const plan = planNewBlock(journal, {
    ...options,
    first: isoWeekOf(date('2026-03-09')),
    count: 4,
    top: 100,
    ...(event ? { event } : {}),
  });

  it('say what is written, what was before, and of each week its role, volume, change and sessions', () => {
    const ticked = new Set(['2026-W11' as ReturnType<typeof isoWeekOf>]);
    assert.deepEqual(inShort(blockRows({ plan, ticked, words })), [
      'check-all | Write the block and the day notes of 1 week | block 2026-W11 to 2026-W14.md | Enter on a week ticks it: its day notes are written as well.',
      '-- | Weeks',
      'history | Before: 2 h a week | as it was done in 2026-W09',
      'pass-filled | W11 Building: 120 min, as before | from Mon, Mar 9, new day notes | flexibility 2 × 60 min Tue 18:00, Fri 18:00',
      'circle-large-outline | W12 Building: 120 min, as before | from Mon, Mar 16, new day notes | flexibility 2 × 60 min Tue 18:00, Fri 18:00',
      'circle-large-outline | W13 Taper: 80 min, −33 % | from Mon, Mar 23, new day notes | flexibility 2 × 40 min Tue 18:00, Fri 18:00',
      'circle-large-outline | W14 Taper: 60 min, −25 % | from Mon, Mar 30, new day notes | flexibility 2 × 30 min Tue 18:00, Fri 18:00',
    ]);
  });

  it('have nothing ticked in a new block, and what changes in one that is planned again', () => {
    assert.deepEqual([...tickedAtFirst(plan)], []);
    const table =
      '#block\n\n| week | flexibility | notes |\n| --- | --- | --- |\n| 2026-W09 | 2 x 60min | |\n| 2026-W11 | 1 x 45min | lighter |\n| 2026-W12 | 6 x 60min | |\n';
    const standing = journalOf({
      ...notes,
      'block.md': table,
      '2026-03-10.md': '- [ ] #session flexibility 18:00 60min 6/10 with:coach\n',
      '2026-03-13.md': '- [ ] #session flexibility 18:00 60min 6/10\n',
    });
    const [block] = openBlocks(standing, options);
    assert.ok(block);
    const again = planBlockAgain(standing, block, options);
    const ticked = tickedAtFirst(again);
    assert.deepEqual([...ticked], ['2026-W11']);
    const rows = inShort(blockRows({ plan: again, ticked, words }));
    assert.equal(rows[0]?.startsWith('check-all | Write the day notes of 1 week | block.md'), true);
    assert.deepEqual(
      rows.filter((row) => /W(?:09|11) /.test(row)),
      [
        'history | W09 Building: 120 min | from Mon, Feb 23, over; what was done | flexibility 120 min',
        'pass-filled | W11 Lighter: 45 min, −62 % | from Mon, Mar 9, its day notes change | flexibility 1 × 45 min · Fri flexibility taken out',
      ],
    );
    assert.ok(rows.some((row) => row.startsWith('circle-slash | Left out: flexibility | ')));
  });
});
