import type { Journal } from '../../journal/journal';
import type { Finding, RemedyName } from '../../training/finding';
import type { CheckOptions } from '../../training/week-under-check';
import { addDate } from './add-date';
import { addGoal } from './add-goal';
import { addMetric } from './add-metric';
import { addRecoverySession } from './add-recovery-session';
import { addWhy } from './add-why';
import { clearPain } from './clear-pain';
import { markSkipped } from './mark-skipped';
import { moveGoalDate } from './move-goal-date';
import { moveToLegalDay } from './move-to-legal-day';
import { rampBack, smallerNextWeek } from './next-week-remedies';
import type { Remedy, RemedyMaker } from './remedy';
import { replaceText } from './replace-text';
import { swapWithAnotherDay } from './swap-with-another-day';
import { tickAsDone } from './tick-as-done';
import { turnFoundIntoRecovery } from './turn-into-recovery';
import { writeRule } from './write-rule';

export type { Remedy } from './remedy';

const makers: { readonly [Name in RemedyName]: RemedyMaker } = {
  'move-to-legal-day': moveToLegalDay,
  'swap-with-another-day': swapWithAnotherDay,
  'turn-into-recovery': turnFoundIntoRecovery,
  'mark-skipped': markSkipped,
  'tick-as-done': tickAsDone,
  'add-recovery-session': addRecoverySession,
  'replace-text': replaceText,
  'add-goal': addGoal,
  'add-why': addWhy,
  'add-date': addDate,
  'add-metric': addMetric,
  'clear-pain': clearPain,
  'move-goal-date': moveGoalDate,
  'write-rule': writeRule,
  'smaller-next-week': smallerNextWeek,
  'ramp-back': rampBack,
};

/**
 * The ways to mend a finding, in the order in which the finding names them; each is worked out when it is asked
 * for. What would change nothing is left out.
 */
export function* remediesFor(
  journal: Journal,
  finding: Finding,
  options: CheckOptions,
): Generator<Remedy, void, undefined> {
  for (const name of finding.remedies) {
    for (const remedy of makers[name]({ journal, finding, options }))
      if (remedy.changes.length > 0) yield remedy;
  }
}
