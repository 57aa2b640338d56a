import type { IsoDate } from '../notation/time/iso-date';
import { addWeeks, type IsoWeek, isoWeekOf, weeksInRow } from '../notation/time/iso-week';

/** How many weeks behind and ahead of the current one are looked at. */
export interface WeeksAround {
  readonly weeksBefore: number;
  readonly weeksAfter: number;
}

/** As long as nothing else is set: the week before, this one, and the two to come. */
export const usualWeeksAround: WeeksAround = { weeksBefore: 1, weeksAfter: 2 };

/** The weeks around that of `today`, in order. */
export function weeksAround(
  today: IsoDate,
  { weeksBefore, weeksAfter }: WeeksAround = usualWeeksAround,
): readonly IsoWeek[] {
  return weeksInRow(addWeeks(isoWeekOf(today), -weeksBefore), weeksBefore + weeksAfter + 1);
}
