import type { BodyReport } from '../../journal/journal';
import { painCaution } from '../cautions';
import type { Finding } from '../finding';
import { loads } from '../open-pain';
import { isHard, type SessionFacts } from '../session-facts';
import { entryPlace, related, sessionPlace } from '../session-place';
import { isToDo } from '../session-state';
import type { WeekRule } from '../week-under-check';
import { message } from '../wording';

function finding(facts: SessionFacts, pains: readonly BodyReport[]): readonly Finding[] {
  const { session, effort } = facts;
  const hurting = pains.filter(
    (pain) => pain.day <= session.day && facts.regions.some((region) => loads(region, pain.region)),
  );
  const first = hurting[0];
  if (!first) return [];
  const regions = hurting.map((pain) => pain.region).join(', ');
  return [
    {
      code: 'open-pain',
      severity: 'warning',
      ...sessionPlace(session),
      message: message(
        'Pain in {0} since the note of {1} is not cleared, and this session loads it at effort {2}/10; leave the region alone until it is',
        regions,
        first.date,
        effort,
      ),
      facts: { date: session.date, kind: session.kind, regions, painDate: first.date, effort },
      related: hurting.map((pain) => related(entryPlace(pain), message(painCaution))),
      remedies: ['turn-into-recovery', 'mark-skipped', 'clear-pain'],
    },
  ];
}

/**
 * A hard session still to do loads a region with uncleared pain. Its routine says which regions it loads.
 *
 * A journal that breaks it:
 *
 *     journal.md
 *     - #routine back-opening flexibility 75min regions:lower-back
 *     2026-02-23.md
 *     - #pain lower-back 5/10
 *     2026-02-26.md
 *     - [ ] #session flexibility 18:30 8/10 routine:back-opening
 *
 * A journal that does not:
 *
 *     journal.md
 *     - #routine back-opening flexibility 75min regions:lower-back
 *     2026-02-23.md
 *     - #pain lower-back 5/10
 *     2026-02-25.md
 *     - #pain lower-back clear
 *     2026-02-26.md
 *     - [ ] #session flexibility 18:30 8/10 routine:back-opening
 */
export const openPain: WeekRule = {
  code: 'open-pain',
  check(week) {
    const hard = week.standing.filter(
      (facts) => isToDo(facts.state) && isHard(facts) && facts.regions.length > 0,
    );
    return hard.length === 0 ? [] : hard.flatMap((facts) => finding(facts, week.openPains()));
  },
};
