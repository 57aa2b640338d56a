import { daysBetween, type IsoDate } from '../../notation/time/iso-date';
import type { StepProgress } from '../step-progress';

/** A step with how it stands to its date. */
export interface StepFigures extends StepProgress {
  /** Days since its date; only while it is overdue. */
  readonly daysOverdue?: number;
  /**
   * Days from the reading that reached it to its date: below zero when it came late. A step that was ticked before a
   * reading was there has none: the athlete's tick counts.
   */
  readonly daysEarly?: number;
  /** A reading has reached it and its box is empty: it can be ticked. */
  readonly canBeTicked: boolean;
}

/** What a step's dates say: overdue, reached by a reading, reached early. */
export function stepFigures(step: StepProgress, today: IsoDate): StepFigures {
  const { by, reachedOn, state } = step;
  const early = by === undefined || reachedOn === undefined ? undefined : daysBetween(reachedOn, by);
  const told = early !== undefined && (state === 'reached' || early >= 0);
  return {
    ...step,
    ...(state === 'overdue' && by !== undefined ? { daysOverdue: daysBetween(by, today) } : {}),
    ...(told ? { daysEarly: early } : {}),
    canBeTicked: state === 'reached',
  };
}
