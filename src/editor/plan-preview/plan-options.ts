import type { IsoWeek } from '../../notation/time/iso-week';
import type { PlanWeeksOptions } from '../../planning/plan-weeks';
import { learnedGaps } from '../../planning/week-problem/comfortable-gaps';
import { checkContext } from '../../training/week-under-check';
import type { OpenJournal } from '../open-journal';

/** How weeks of a journal are planned: as its day, clock and settings say, with the gaps that its notes have taught. */
export function planOptions(
  open: Pick<OpenJournal, 'journal' | 'settings' | 'today' | 'zone'>,
  weeks: readonly IsoWeek[],
  mode: 'new' | 'rearrange',
): PlanWeeksOptions {
  const check = { today: open.today(), zone: open.zone() };
  return {
    ...check,
    weeks,
    mode,
    comfortable: learnedGaps(checkContext(open.journal, check)),
    timeOfDay: open.settings.timeOfDay,
  };
}
