import type { JournalEvent, JournalPlan } from '../../journal/journal';
import { dayNumber, isoWeekday } from '../../notation/time/iso-date';
import { addWeeks, type IsoWeek, isoWeekOfDay, mondayOf } from '../../notation/time/iso-week';
import type { BlockWeekRole } from '../../training/block/block-rows';
import { taperShares } from '../../training/statistics/taper';
import type { BlockSettings } from './block-settings';

/** What a week of a block is there for. */
export interface WeekRole {
  readonly week: IsoWeek;
  readonly role: BlockWeekRole;
  /** What is left of the volume of the last building week; 1 in a building week. */
  readonly share: number;
}

const thursday = 4;

/**
 * The weeks of a taper before `date`, with the share of the volume that is left. It ends with the week of the event; one
 * at the start of its week, up to Wednesday, has the whole weeks before it, and its own goes on with the last share.
 */
function taperBefore(event: JournalEvent, settings: BlockSettings): ReadonlyMap<IsoWeek, number> {
  const day = dayNumber(event.date);
  const own = isoWeekOfDay(day);
  const last = isoWeekday(day) >= thursday ? own : addWeeks(own, -1);
  const shares = taperShares(settings.taperWeeks, settings.taperReduction);
  const weeks = new Map(
    shares.map((share, index) => [addWeeks(last, index - settings.taperWeeks + 1), share] as const),
  );
  if (!weeks.has(own)) weeks.set(own, shares.at(-1) ?? 1);
  return weeks;
}

/** The events that a block of these weeks can lead to: those inside it, or in the week behind it. */
export function eventsOfBlock(plan: JournalPlan, weeks: readonly IsoWeek[]): readonly JournalEvent[] {
  const [first, last] = [weeks[0], weeks.at(-1)];
  if (first === undefined || last === undefined) return [];
  const [from, to] = [mondayOf(first), mondayOf(last) + 13];
  return plan.events
    .filter(({ date }) => dayNumber(date) >= from && dayNumber(date) <= to)
    .sort((one, other) => (one.date < other.date ? -1 : 1));
}

/**
 * What each week of a block is there for: the taper before the event, a lighter week after every so many weeks, and
 * building in all others. A taper is light itself: there is no lighter week right before it, and the weeks are counted
 * anew behind it.
 */
export function rolesOf(
  weeks: readonly IsoWeek[],
  event: JournalEvent | undefined,
  settings: BlockSettings,
): readonly WeekRole[] {
  const taper = event ? taperBefore(event, settings) : new Map<IsoWeek, number>();
  let sinceLight = 0;
  return weeks.map((week): WeekRole => {
    const share = taper.get(week);
    if (share !== undefined) {
      sinceLight = 0;
      return { week, role: 'taper', share };
    }
    sinceLight += 1;
    const isDue = settings.lighterEvery > 0 && sinceLight >= settings.lighterEvery;
    if (!isDue || taper.has(addWeeks(week, 1))) return { week, role: 'building', share: 1 };
    sinceLight = 0;
    return { week, role: 'lighter', share: settings.lighterVolume / 100 };
  });
}
