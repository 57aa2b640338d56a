import type { JournalPlan } from '../../journal/journal';
import type { BlockRow } from '../../notation/entries';
import type { IsoWeek } from '../../notation/time/iso-week';

/** What a week of a block is there for. */
export type BlockWeekRole = 'building' | 'lighter' | 'taper';

/** The row of `week` in the first block that has one. */
export function blockRowOf(plan: JournalPlan, week: IsoWeek): BlockRow | undefined {
  for (const { rows } of plan.blocks) {
    const row = rows.find((one) => one.week.value === week);
    if (row) return row;
  }
  return undefined;
}

/** The role that the notes of a row begin with; building when they begin with neither of the others. */
export function roleOf({ words }: Pick<BlockRow, 'words'>): BlockWeekRole {
  const first = /^\p{L}+/u.exec(words?.value.toLowerCase() ?? '')?.[0];
  return first === 'lighter' || first === 'taper' ? first : 'building';
}
