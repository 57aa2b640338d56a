import { type DayNumber, type IsoDate, isoDate } from '../../notation/time/iso-date';
import { BREAK_DAYS } from '../statistics/return-ramp';
import type { PlannedSession } from './planned-sessions';

/** A time of two weeks or more without a done session. */
export interface TrainingBreak {
  /** The last session before it. */
  readonly lastDone: IsoDate;
  /** From then to the next done session, or to the day that was asked for. */
  readonly days: number;
  /** The first session after it, when there is one. */
  readonly backOn?: IsoDate;
}

/** The latest break up to the day `today`, over or not, or `undefined`. */
export function latestBreak(
  sessions: readonly PlannedSession[],
  today: DayNumber,
): TrainingBreak | undefined {
  const days = sessions.filter(({ outcome }) => outcome === 'done').map(({ day }) => day);
  let found: TrainingBreak | undefined;
  for (const [index, day] of days.entries()) {
    const next = days[index + 1];
    const length = (next ?? today) - day;
    if (length < BREAK_DAYS) continue;
    found = {
      lastDone: isoDate(day),
      days: length,
      ...(next === undefined ? {} : { backOn: isoDate(next) }),
    };
  }
  return found;
}
