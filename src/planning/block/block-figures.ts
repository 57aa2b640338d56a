import type { WrittenBlock } from '../../journal/journal';
import type { BlockRow } from '../../notation/entries';
import { type IsoWeek, isoWeekOf } from '../../notation/time/iso-week';
import { type BlockWeekRole, roleOf } from '../../training/block/block-rows';
import type { CheckContext } from '../../training/week-under-check';
import type { BlockSettings } from './block-settings';
import { WeeksCompared } from './kind-volumes';
import { doneByKind, type MinutesByKind, totalOf, type VolumeBefore, volumeBefore } from './volume-before';

/** What a building week holds beyond the limit. */
export interface AboveLimit {
  readonly kind: string;
  readonly percent: number;
}

/** A week of a block in numbers. */
export interface BlockWeekFigures {
  readonly week: IsoWeek;
  readonly role: BlockWeekRole;
  /** What the table says; in weeks that are over, what was done. */
  readonly isOver: boolean;
  readonly byKind: MinutesByKind;
  readonly minutes: number;
  /** Against the row before, or the weeks before the block; `undefined` where those hold nothing. */
  readonly changePercent?: number;
  readonly aboveLimit: readonly AboveLimit[];
}

/** A block in numbers. */
export interface BlockFigures {
  readonly before: VolumeBefore;
  readonly weeks: readonly BlockWeekFigures[];
}

function written({ volumes }: BlockRow): MinutesByKind {
  return new Map(volumes.map(({ kind, minutes }) => [kind, minutes]));
}

/** A percentage above `before`; `undefined` where that is nothing. */
function percentAbove(minutes: number, before: number): number | undefined {
  return before === 0 ? undefined : (100 * (minutes - before)) / before;
}

/**
 * The weeks of a block's table in numbers. Each kind of a building week is compared with the three building weeks before
 * it, those before the block among them; lighter weeks and tapers are left out, as they are light on purpose. When no kind
 * is above the limit, all of them together are not either.
 */
export function blockFigures(
  context: CheckContext,
  block: Pick<WrittenBlock, 'rows' | 'kinds'>,
  settings: BlockSettings,
): BlockFigures {
  const kinds = block.kinds.map(({ value }) => value);
  const first = block.rows[0]?.week.value;
  const before: VolumeBefore =
    first === undefined ? { weeks: [], minutes: new Map() } : volumeBefore(context, first, kinds);
  const current = isoWeekOf(context.today);
  const compared = new Map(kinds.map((kind) => [kind, new WeeksCompared(before.minutes.get(kind) ?? 0)]));
  let previous: MinutesByKind = before.minutes;
  const weeks = block.rows.map((row): BlockWeekFigures => {
    const week = row.week.value;
    const role = roleOf(row);
    const isOver = week < current;
    const byKind = isOver ? doneByKind(context, week, kinds) : written(row);
    const change = percentAbove(totalOf(byKind), totalOf(previous));
    const above = kinds.flatMap((kind): readonly AboveLimit[] => {
      const mean = role === 'building' && !isOver ? (compared.get(kind)?.mean ?? 0) : 0;
      const percent = percentAbove(byKind.get(kind) ?? 0, mean);
      return percent !== undefined && percent > settings.mostIncrease + 1e-9 ? [{ kind, percent }] : [];
    });
    if (role === 'building') for (const kind of kinds) compared.get(kind)?.add(byKind.get(kind) ?? 0);
    previous = byKind;
    return {
      week,
      role,
      isOver,
      byKind,
      minutes: totalOf(byKind),
      ...(change === undefined ? {} : { changePercent: change }),
      aboveLimit: above,
    };
  });
  return { before, weeks };
}
