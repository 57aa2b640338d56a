import type { Session } from '../../journal/journal';
import type { SessionEntry } from '../../notation/entries';
import { type DayNumber, isoDate, isoWeekday } from '../../notation/time/iso-date';
import { isoWeekOfDay } from '../../notation/time/iso-week';
import type { WallMinutes } from '../../notation/time/wall-clock';
import type { CheckContext } from '../../training/week-under-check';
import { isOpenFor, mayRun, openHours, startsIn } from '../open-hours';

/** A day, and a time when the session has one. */
export interface Slot {
  readonly day: DayNumber;
  readonly start: WallMinutes | undefined;
}

/** The session as it would stand in a slot: to do, and neither moved nor skipped. */
export function sessionIn(session: Session, { day, start }: Slot): Session {
  const { moved: _moved, skipped: _skipped, span, task, ...fields } = session.entry;
  const length = span?.value.end === undefined ? undefined : span.value.end - span.value.start;
  const value =
    start === undefined ? undefined : { start, ...(length === undefined ? {} : { end: start + length }) };
  const entry: SessionEntry = {
    ...fields,
    ...(value ? { span: { value, range: span?.range ?? fields.range } } : {}),
    ...(task ? { task: { ...task, checked: false } } : {}),
  };
  return { note: session.note, entry, date: isoDate(day), day, kind: session.kind };
}

/**
 * The days to which a session could go, today or later, those wanted most first: later days of its week, earlier
 * ones, then seven days of the time after.
 */
export function daysToTry(session: Session, today: DayNumber): readonly DayNumber[] {
  const monday = session.day - isoWeekday(session.day) + 1;
  const sunday = monday + 6;
  const days: DayNumber[] = [];
  for (let day = session.day + 1; day <= sunday; day += 1) days.push(day);
  for (let day = session.day - 1; day >= monday; day -= 1) days.push(day);
  const after = Math.max(sunday + 1, today);
  for (let day = after; day < after + 7; day += 1) days.push(day);
  return days.filter((day) => day >= today);
}

/** How many times of a day are tried beside the session's own. */
const mostStarts = 16;

/**
 * The times of a day at which the hours allow a session: its own first, then the nearest to it. Other times are
 * offered where free hours say when a session may stand, or where it is asked for with `anyTime`.
 */
export function slotsOn(
  context: CheckContext,
  session: Session,
  day: DayNumber,
  minutes: number,
  anyTime: boolean,
): readonly Slot[] {
  const { plan, zone } = context;
  const own = session.entry.span?.value.start;
  if (own === undefined) return isOpenFor(plan, session, day, zone) ? [{ day, start: undefined }] : [];
  const others =
    plan.free.length > 0 || anyTime
      ? [...startsIn(openHours(plan, session, day, zone), minutes)]
          .filter((start) => start !== own)
          .sort((one, other) => Math.abs(one - own) - Math.abs(other - own))
          .slice(0, mostStarts)
      : [];
  const starts = mayRun(plan, session, day, own, minutes, zone) ? [own, ...others] : others;
  return starts.map((start) => ({ day, start }));
}

/** How long the session lasts, 0 when nothing says. */
export function minutesOf(context: CheckContext, session: Session): number {
  const { day, entry, note } = session;
  const facts = context
    .weeks(isoWeekOfDay(day))
    .sessions.find((one) => one.session.note === note && one.session.entry.range.start === entry.range.start);
  return facts?.minutes ?? 0;
}
