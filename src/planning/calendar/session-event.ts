import type { Journal } from '../../journal/journal';
import type { IsoDate } from '../../notation/time/iso-date';
import { dayNumber } from '../../notation/time/iso-date';
import { instantOf, wallClockAt } from '../../notation/time/zoned-time';
import type { SessionFacts } from '../../training/session-facts';
import { sessionTimes } from '../../training/session-times';
import { sessionUid } from './event-identity';
import type { EventTime, EventToWrite } from './event-lines';
import { exerciseLines } from './exercise-lines';
import type { SessionOrigin } from './session-chains';

const minutesADay = 1440;

/** What the events of one export have in common. */
export interface EventOptions {
  readonly journalId: string;
  /** tzdb name of the clock in the notes. */
  readonly zone: string;
  readonly alarmMinutes?: number;
}

/** When a session takes place: on its clock, or the whole day when its line gives no time. */
function timeOf(facts: SessionFacts, zone: string): EventTime {
  const { day, entry } = facts.session;
  const times = sessionTimes(facts, zone);
  const span = entry.span?.value;
  if (!times || !span) return { kind: 'day', day };
  const start = day * minutesADay + span.start;
  // Nothing says how long it lasts: it only has a beginning.
  if (times.end <= times.start) return { kind: 'time', zone, start };
  const end = wallClockAt(times.end, zone);
  // Where the clock goes back, what it shows at the end may be read as an hour earlier.
  const isPlain = instantOf(end.date, end.minutes, zone) === times.end;
  const local = dayNumber(end.date) * minutesADay + end.minutes;
  return {
    kind: 'time',
    zone,
    start,
    end: isPlain ? { local } : { minutes: times.end - times.start },
  };
}

/** The session's kind, and the goals that its line names. */
function summaryOf(facts: SessionFacts, journal: Journal): string {
  const { kind, entry } = facts.session;
  const goals = entry.for.map(({ value }) => journal.plan.goals.get(value)?.title ?? value);
  return goals.length === 0 ? kind : `${kind}: ${goals.join(', ')}`;
}

/** Length, effort, company and exercises: what its note holds for everyone. */
function descriptionOf({ session, minutes, routine }: SessionFacts, journal: Journal): string {
  const { entry, note } = session;
  const amounts = [
    ...(minutes === undefined ? [] : [`${Math.round(minutes)} min`]),
    ...(entry.rating ? [`${entry.rating.value}/10`] : []),
    ...entry.with.map(({ value }) => `with ${value}`),
  ].join(', ');
  const own = exerciseLines(journal.note(note)?.text ?? '', entry);
  const ofRoutine = routine && exerciseLines(journal.note(routine.note)?.text ?? '', routine.entry);
  return [amounts, ...(own.length > 0 ? own : (ofRoutine ?? []))].filter((line) => line !== '').join('\n');
}

/** The event of a session that has not moved on. A skipped one is cancelled. */
export function sessionEvent(
  facts: SessionFacts,
  origin: SessionOrigin,
  journal: Journal,
  { journalId, zone, alarmMinutes }: EventOptions,
): EventToWrite {
  const isCancelled = facts.state === 'skipped';
  const time = timeOf(facts, zone);
  const { where } = facts.session.entry;
  return {
    uid: sessionUid(origin, journalId),
    sequence: origin.moves + (isCancelled ? 1 : 0),
    time,
    summary: summaryOf(facts, journal),
    description: descriptionOf(facts, journal),
    ...(where ? { location: where.value } : {}),
    isCancelled,
    takesTime: time.kind === 'time',
    ...(alarmMinutes !== undefined && facts.state === 'planned' ? { alarm: alarmMinutes } : {}),
  };
}

/** The event of an `#event` line: it marks a day and takes no time of it. */
export function dayEvent(date: IsoDate, name: string, uid: string): EventToWrite {
  return {
    uid,
    sequence: 0,
    time: { kind: 'day', day: dayNumber(date) },
    summary: name === '' ? 'event' : name,
    isCancelled: false,
    takesTime: false,
  };
}
