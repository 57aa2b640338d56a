import { type DayNumber, type IsoDate, isoDate } from '../../notation/time/iso-date';
import { type LoadTotal, totalLoad } from '../statistics/session-load';
import type { SessionLoad } from './session-loads';

/** The load of one calendar day; a day without a session is a rest day with load 0. */
export interface DayLoad {
  readonly date: IsoDate;
  readonly day: DayNumber;
  readonly load: LoadTotal;
  readonly minutes: number;
}

/** Minutes of the sessions that say how long they were. */
export function knownMinutes(sessions: readonly SessionLoad[]): number {
  return sessions.reduce((sum, { minutes }) => sum + (minutes ?? 0), 0);
}

/** The loads of every day from `first` to `last`, both included. */
export function dayLoads(
  sessions: readonly SessionLoad[],
  first: DayNumber,
  last: DayNumber,
): readonly DayLoad[] {
  const byDay = new Map<DayNumber, SessionLoad[]>();
  for (const session of sessions) byDay.set(session.day, [...(byDay.get(session.day) ?? []), session]);
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, offset) => {
    const day = first + offset;
    const own = byDay.get(day) ?? [];
    return {
      date: isoDate(day),
      day,
      load: totalLoad(own.map(({ load }) => load)),
      minutes: knownMinutes(own),
    };
  });
}
