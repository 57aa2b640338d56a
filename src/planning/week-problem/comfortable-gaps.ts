import { recoveryFigures } from '../../training/recovery/recovery-figures';
import type { CheckContext } from '../../training/week-under-check';
import type { ComfortableGap } from './problem-rules';

/**
 * The gaps that the notes themselves have taught: where a kind or region stays sore longer than the rules keep it apart,
 * the learned gap is wanted as well. It is a wish, never a rule; nothing is wanted before there are enough notes.
 */
export function learnedGaps(context: CheckContext): readonly ComfortableGap[] {
  return recoveryFigures(context).flatMap(({ subject, current, learned }): readonly ComfortableGap[] => {
    if (learned.status !== 'estimated' || learned.hours <= (current?.hours ?? 0)) return [];
    return [{ subject: subject.name, minutes: Math.ceil(learned.hours * 60) }];
  });
}
