import type { IsoDate } from '../notation/time/iso-date';
import { addWeeks, type IsoWeek, isoWeekOf, parseIsoWeek, weeksInRow } from '../notation/time/iso-week';
import type { FolderOptions } from './folder-options';

/** What `plan` is asked beside. */
export interface PlanOptions extends FolderOptions {
  /** The first week; the one after that of today when left out. */
  readonly first?: IsoWeek;
  readonly count: number;
  /** Whether the notes are written. */
  readonly write: boolean;
}

/** A season: a plan further ahead is a wish. */
export const mostPlannedWeeks = 12;

/** What `plan` is given beside, as it was typed. */
export interface PlanWords {
  readonly week?: string | undefined;
  readonly weeks?: string | undefined;
  readonly from?: string | undefined;
  readonly write?: boolean | undefined;
}

/** The options of `plan`, or in one line why they cannot be understood. */
export function readPlanOptions(asked: FolderOptions, words: PlanWords): PlanOptions | string {
  const { week, weeks, from } = words;
  if (week !== undefined && (weeks !== undefined || from !== undefined)) {
    return 'Say either --week, or --weeks with --from.';
  }
  const named = week ?? from;
  const first = named === undefined ? undefined : parseIsoWeek(named);
  if (named !== undefined && first === undefined) return `"${named}" is not a week such as 2026-W10.`;
  const count = weeks === undefined ? 1 : /^\d{1,2}$/.test(weeks) ? Number(weeks) : 0;
  if (count < 1 || count > mostPlannedWeeks) {
    return `"${weeks}" is not a number of weeks from 1 to ${mostPlannedWeeks}.`;
  }
  return { ...asked, ...(first === undefined ? {} : { first }), count, write: words.write === true };
}

/** The weeks to plan on the day `today`. */
export function plannedWeeks({ first, count }: PlanOptions, today: IsoDate): readonly IsoWeek[] {
  return weeksInRow(first ?? addWeeks(isoWeekOf(today), 1), count);
}
