import type { JournalPlan } from '../../journal/journal';
import type { IsoDate } from '../../notation/time/iso-date';
import { isoWeekOf, mondayOf } from '../../notation/time/iso-week';
import type { TrainingBreak } from './training-break';

/** How far a training block has come. */
export interface BlockWeek {
  /** 1 for the week in which it began. */
  readonly week: number;
  readonly began: IsoDate;
  /** What began it. */
  readonly by: 'goal' | 'return';
  /** The weeks in which many slow down: the look back is offered earlier. */
  readonly reviewEarly: boolean;
}

/** Weeks of a block in which adherence sags. Common practice, no source. */
export const saggingWeeks: readonly number[] = [3, 4, 7, 8];

/**
 * The week of the block that `today` lies in: counted from the latest `from:` of a goal that is open, or from the
 * return after a break when that was later. `undefined` when neither is known.
 */
export function blockWeek(
  plan: JournalPlan,
  today: IsoDate,
  lastBreak?: TrainingBreak,
): BlockWeek | undefined {
  const starts = [...plan.goals.values()].flatMap(({ from, by, closed }) =>
    from !== undefined && from <= today && !closed && (by === undefined || by >= today)
      ? [{ began: from, by: 'goal' } as const]
      : [],
  );
  const back = lastBreak?.backOn;
  const all = [...starts, ...(back === undefined ? [] : [{ began: back, by: 'return' } as const])];
  const latest = all.sort((one, other) => (one.began < other.began ? 1 : -1))[0];
  if (!latest) return undefined;
  const monday = (date: IsoDate): number => mondayOf(isoWeekOf(date));
  const week = (monday(today) - monday(latest.began)) / 7 + 1;
  return { week, ...latest, reviewEarly: saggingWeeks.includes(week) };
}
