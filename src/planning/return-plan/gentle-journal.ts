import type { Journal, Need } from '../../journal/journal';
import type { IsoWeek } from '../../notation/time/iso-week';
import { gentleEffort, hardEffort } from '../../training/session-facts';
import { journalWithNeeds } from '../journal-with-needs';
import { journalWithSmallerWeek } from '../smaller-week';

function isHardNeed({ rating }: Need): boolean {
  return (rating ?? hardEffort) >= hardEffort;
}

/** What is hard comes last among the needs of a goal; in weeks without anything hard, it is asked for more gently. */
function softened(needs: readonly Need[], allowsHard: boolean): readonly Need[] {
  const ordered = [...needs.filter((need) => !isHardNeed(need)), ...needs.filter(isHardNeed)];
  return allowsHard
    ? ordered
    : ordered.map((need) => (isHardNeed(need) ? { ...need, rating: gentleEffort } : need));
}

/**
 * The journal as if `week` asked for at most `sessions` training sessions, what is hard after what is not. While
 * `allowsHard` is off, needs of effort 7 and above, and needs that name no effort, ask for 6. Recovery is asked for as
 * before, and rules and hours stay.
 */
export function gentleJournal(
  journal: Journal,
  week: IsoWeek,
  { sessions, allowsHard }: { readonly sessions: number; readonly allowsHard: boolean },
): Journal {
  return journalWithSmallerWeek(
    journalWithNeeds(journal, (needs) => softened(needs, allowsHard)),
    week,
    sessions,
  );
}
