import type { Weekday } from '../../notation/entries';
import { isoDate, isoWeekday } from '../../notation/time/iso-date';
import { isoWeekOfDay } from '../../notation/time/iso-week';
import { type AdherenceShare, adherenceShare } from './adherence-share';
import type { PlannedSession } from './planned-sessions';

/** When in the day a session begins; the bounds are 12:00 and 17:00. */
export type TimeOfDay = 'morning' | 'afternoon' | 'evening' | 'no-time';

/** Done of planned among the sessions that share something. */
export interface AdherenceGroup<Key> extends AdherenceShare {
  readonly key: Key;
}

/** Done of planned, in all and in parts. */
export interface AdherenceFigures {
  readonly all: AdherenceShare;
  /** Key `2026-W09`; in order of time. Weeks without planned sessions are left out. */
  readonly byWeek: readonly AdherenceGroup<string>[];
  /** Key `2026-02`; in order of time. */
  readonly byMonth: readonly AdherenceGroup<string>[];
  /** By kind as written, in order of name. */
  readonly byKind: readonly AdherenceGroup<string>[];
  /** Monday 1 to Sunday 7. */
  readonly byWeekday: readonly AdherenceGroup<Weekday>[];
  readonly byTimeOfDay: readonly AdherenceGroup<TimeOfDay>[];
}

const timesOfDay: readonly TimeOfDay[] = ['morning', 'afternoon', 'evening', 'no-time'];
const noon = 12 * 60;
const evening = 17 * 60;

/** When in the day a session begins. */
export function timeOfDay({ facts }: PlannedSession): TimeOfDay {
  const start = facts.session.entry.span?.value.start;
  if (start === undefined) return 'no-time';
  if (start < noon) return 'morning';
  return start < evening ? 'afternoon' : 'evening';
}

function groups<Key extends string | number>(
  sessions: readonly PlannedSession[],
  keyOf: (session: PlannedSession) => Key,
  compare: (one: Key, other: Key) => number,
): readonly AdherenceGroup<Key>[] {
  const found = new Map<Key, PlannedSession[]>();
  for (const session of sessions) {
    const key = keyOf(session);
    found.set(key, [...(found.get(key) ?? []), session]);
  }
  return [...found]
    .sort(([one], [other]) => compare(one, other))
    .map(([key, own]) => ({ key, ...adherenceShare(own) }));
}

const byText = (one: string, other: string): number => (one < other ? -1 : one > other ? 1 : 0);

/** The figures of past planned sessions, by week, month, kind, weekday and time of day. */
export function adherenceFigures(sessions: readonly PlannedSession[]): AdherenceFigures {
  return {
    all: adherenceShare(sessions),
    byWeek: groups(sessions, ({ day }) => isoWeekOfDay(day), byText),
    byMonth: groups(sessions, ({ day }) => isoDate(day).slice(0, 7), byText),
    byKind: groups(sessions, ({ facts }) => facts.session.kind, byText),
    byWeekday: groups(
      sessions,
      ({ day }) => isoWeekday(day) as Weekday,
      (one, other) => one - other,
    ),
    byTimeOfDay: groups(
      sessions,
      timeOfDay,
      (one, other) => timesOfDay.indexOf(one) - timesOfDay.indexOf(other),
    ),
  };
}
