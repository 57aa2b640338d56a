import type { Journal } from '../journal/journal';
import type { IsoWeek } from '../notation/time/iso-week';
import type { Finding } from './finding';
import { inOrder } from './finding-order';
import { weekRules } from './rules';
import { type CheckContext, type CheckOptions, checkContext, weekUnderCheck } from './week-under-check';

/**
 * What the rules and needs find in the sessions of `week`, in order of note, place and code. A finding may stand in
 * a note outside the week: on the need that is not met, or on the line that moved a session here.
 */
export function checkWeek(journal: Journal, week: IsoWeek, options: CheckOptions): readonly Finding[] {
  return checkWeekIn(checkContext(journal, options), week);
}

/** As {@link checkWeek}, for many weeks of one journal that share what they have worked out. */
export function checkWeekIn(context: CheckContext, week: IsoWeek): readonly Finding[] {
  const view = weekUnderCheck(context, week);
  return inOrder(weekRules.flatMap((rule) => rule.check(view)));
}
