import type { Journal } from '../journal/journal';
import type { IsoDate } from '../notation/time/iso-date';
import type { IsoWeek } from '../notation/time/iso-week';
import type { SessionFacts } from './session-facts';
import type { SessionState } from './session-state';
import { weekReader } from './training-week';

/** A week in figures. */
export interface WeekSummary {
  readonly week: IsoWeek;
  /** Every session that stands in the week: done, still planned, or overdue. */
  readonly planned: number;
  readonly done: number;
  readonly skipped: number;
  readonly overdue: number;
  /** Minutes of the sessions in `planned`; a session that says no length adds nothing. */
  readonly minutesPlanned: number;
  readonly minutesDone: number;
}

/** The minutes of the sessions together; those of unknown length add nothing. */
export function totalMinutes(sessions: readonly SessionFacts[]): number {
  return sessions.reduce((total, one) => total + (one.minutes ?? 0), 0);
}

/**
 * The figures of `week` as they are on the day `today`. A session that was moved counts where it was moved to.
 * @param weeks The reader that already read the journal, when there is one.
 */
export function summariseWeek(
  journal: Journal,
  week: IsoWeek,
  today: IsoDate,
  weeks = weekReader(journal, today),
): WeekSummary {
  const { sessions, standing } = weeks(week);
  const inState = (state: SessionState) => sessions.filter((one) => one.state === state);
  const done = inState('done');
  return {
    week,
    planned: standing.length,
    done: done.length,
    skipped: inState('skipped').length,
    overdue: inState('overdue').length,
    minutesPlanned: totalMinutes(standing),
    minutesDone: totalMinutes(done),
  };
}
