import type { NotePlace } from '../../journal/note';
import { formatTime } from '../../notation/time/wall-clock';
import type { Finding, Message } from '../finding';
import { busySpans, type ClockSpan, freeSpans, suits } from '../free-hours';
import { isDayTaken } from '../open-days';
import type { SessionFacts } from '../session-facts';
import { entryPlace, related, sessionPlace } from '../session-place';
import type { WeekRule, WeekUnderCheck } from '../week-under-check';
import { message, weekdayName } from '../wording';

/** When a session runs on the clock; a moment when nothing says how long it lasts. */
function clockSpan(facts: SessionFacts): ClockSpan | undefined {
  const span = facts.session.entry.span?.value;
  return span && { start: span.start, end: span.end ?? span.start + (facts.minutes ?? 0) };
}

function inWords(spans: readonly ClockSpan[]): string {
  const show = (minutes: number) => formatTime(Math.max(0, minutes));
  return spans.map((span) => `${show(span.start)}-${show(span.end)}`).join(', ');
}

/** Whether a session takes any minute of a busy span, or begins in it. */
function takes(session: ClockSpan, busy: ClockSpan): boolean {
  return session.start < busy.end && (session.end > busy.start || session.start === busy.start);
}

function busyMessage(facts: SessionFacts, week: WeekUnderCheck): Message | undefined {
  const { day } = facts.session;
  if (isDayTaken(week.plan, day, week.zone)) return message('{0} is marked as busy', facts.session.date);
  const span = clockSpan(facts);
  const busy = span && busySpans(week.plan, day, week.zone).find((one) => takes(span, one));
  if (!span || !busy) return undefined;
  return message(
    '{0} {1} is marked as busy; the session is at {2}',
    weekdayName(day),
    inWords([busy]),
    inWords([span]),
  );
}

function freeMessage(facts: SessionFacts, week: WeekUnderCheck): Message | undefined {
  const { session } = facts;
  const { free } = week.plan;
  if (free.length === 0) return undefined;
  const name = weekdayName(session.day);
  const suitable = freeSpans(
    free.filter((one) => suits(session, one)),
    session.day,
  );
  const span = clockSpan(facts);
  if (suitable.length === 0) {
    return freeSpans(free, session.day).length === 0
      ? message('{0} has no free hours', name)
      : message('{0} has no free hours for this place or company', name);
  }
  if (!span || suitable.some((one) => one.start <= span.start && span.end <= one.end)) return undefined;
  if (span.start === span.end) {
    return message(
      '{0} is free {1}; the session starts at {2}',
      name,
      inWords(suitable),
      formatTime(span.start),
    );
  }
  return message('{0} is free {1}; the session is at {2}', name, inWords(suitable), inWords([span]));
}

/** The lines, and the events of calendar files, that speak of the session's day. */
function placesOf({ session: { date, day } }: SessionFacts, week: WeekUnderCheck, isBusy: boolean) {
  const { plan, zone } = week;
  if (!isBusy) return plan.free.filter((free) => freeSpans([free], day).length > 0).map(entryPlace);
  return [
    ...plan.busy.filter(({ days }) => days.first <= date && date <= days.last).map(entryPlace),
    ...plan.calendars.flatMap(({ path, calendar }) => {
      const { spans, days } = calendar.between(day, day, zone);
      return [...days, ...spans].map(({ event }): NotePlace => ({ note: path, range: event.range }));
    }),
  ];
}

function finding(facts: SessionFacts, week: WeekUnderCheck): readonly Finding[] {
  const busy = busyMessage(facts, week);
  const what = busy ?? freeMessage(facts, week);
  if (!what) return [];
  const { session } = facts;
  const places = placesOf(facts, week, busy !== undefined);
  return [
    {
      code: 'outside-free-hours',
      severity: 'warning',
      ...sessionPlace(session),
      message: what,
      facts: { date: session.date, kind: session.kind, because: busy ? 'busy' : 'not-free' },
      related: places.map((place) =>
        related(place, busy ? message('The busy time') : message('The free hours')),
      ),
      remedies: ['move-to-legal-day', 'swap-with-another-day', 'mark-skipped'],
    },
  ];
}

/**
 * A planned session stands in busy time, or outside the free hours when the journal names any. A session that says
 * where or with whom needs hours that say the same or nothing. What is done or past is left alone.
 *
 * A journal that breaks it:
 *
 *     journal.md
 *     - #free thu 18:00-21:00
 *     2026-02-26.md
 *     - [ ] #session flexibility 07:00 75min -- Thursday is free 18:00-21:00
 *
 * A journal that does not:
 *
 *     journal.md
 *     - #free thu 18:00-21:00
 *     2026-02-26.md
 *     - [ ] #session flexibility 18:30 75min
 */
export const outsideFreeHours: WeekRule = {
  code: 'outside-free-hours',
  check: (week) =>
    week.standing.filter((facts) => facts.state === 'planned').flatMap((facts) => finding(facts, week)),
};
