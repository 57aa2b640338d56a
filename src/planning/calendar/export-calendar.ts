import type { Journal } from '../../journal/journal';
import { type DayNumber, dayNumber, type IsoDate } from '../../notation/time/iso-date';
import { isoWeekOfDay } from '../../notation/time/iso-week';
import { type InstantMinutes, isKnownZone } from '../../notation/time/zoned-time';
import { weekReader } from '../../training/training-week';
import { eventUid } from './event-identity';
import { cancelledLines, type EventToWrite, eventLines, zonesIn } from './event-lines';
import { type PreviousEvent, type PreviousExport, readPreviousExport } from './previous-export';
import { fileOf, utcValue } from './property-lines';
import { type ReviewReminder, reviewEvents } from './review-event';
import { sessionChains } from './session-chains';
import { dayEvent, type EventOptions, sessionEvent } from './session-event';
import { timeZoneLines } from './time-zone-lines';

/** What is exported, and how. */
export interface ExportOptions extends EventOptions {
  /** First and last day, both included. */
  readonly first: IsoDate;
  readonly last: IsoDate;
  readonly today: IsoDate;
  /** The time of the export, from which calendars see what is newer. */
  readonly stamp: InstantMinutes;
  /** The weekly look back; not in the calendar when left out. */
  readonly review?: ReviewReminder;
  /** The text of the file that the last export wrote. */
  readonly previous?: string;
}

/** The product that a calendar file names as its maker. */
const product = '-//Markdown Training Journal//Markdown Training Journal//EN';

/** Properties whose change makes an event another one for those who have it in their calendar. */
const significant = /^(?:DTSTART|DTEND|DURATION|SUMMARY|LOCATION|STATUS)[:;]/;

function sameLines(
  one: readonly string[],
  other: readonly string[],
  counts: (line: string) => boolean,
): boolean {
  const [left, right] = [one, other].map((lines) => lines.filter(counts).join('\n'));
  return left === right;
}

/** The sessions that stand, or once stood, in the span, the events of its days, and its look backs. */
function eventsIn(journal: Journal, options: ExportOptions): readonly EventToWrite[] {
  const first = dayNumber(options.first);
  const last = dayNumber(options.last);
  const inSpan = (day: DayNumber) => first <= day && day <= last;
  const { sessions, originOf } = sessionChains(journal);
  const weeks = weekReader(journal, options.today);
  const training = sessions.flatMap((session) => {
    const origin = originOf(session);
    // One that was moved out of the span is in the calendar at its old place, and has to leave it.
    if (!origin.days.some(inSpan)) return [];
    const facts = weeks(isoWeekOfDay(session.day)).sessions.find((one) => one.session === session);
    return facts ? [sessionEvent(facts, origin, journal, options)] : [];
  });
  const ordinals = new Map<IsoDate, number>();
  const days = journal.plan.events.flatMap(({ date, name }) => {
    const ordinal = (ordinals.get(date) ?? 0) + 1;
    ordinals.set(date, ordinal);
    return inSpan(dayNumber(date)) ? [dayEvent(date, name, eventUid(date, ordinal, options.journalId))] : [];
  });
  const reviews = options.review ? reviewEvents(first, last, options.today, options.review, options) : [];
  return [...training, ...days, ...reviews];
}

/** An event's lines, with a sequence number and a stamp that follow on what was exported before. */
function linesAfter(event: EventToWrite, before: PreviousEvent | undefined, stamp: InstantMinutes) {
  const lines = (sequence: number) => eventLines({ ...event, sequence }, utcValue(stamp));
  if (!before) return lines(event.sequence);
  const isChanged = !sameLines(lines(0), before.lines, (line) => significant.test(line));
  const next = lines(Math.max(event.sequence, before.sequence + (isChanged ? 1 : 0)));
  // What has not changed at all stays as it is, to the letter.
  return sameLines(next, before.lines, (line) => !line.startsWith('DTSTAMP:')) ? before.lines : next;
}

/** Events of the last export that the journal no longer has, on days of the span. */
function goneLines(
  previous: PreviousExport,
  kept: ReadonlySet<string>,
  { first, last, stamp }: ExportOptions,
): readonly (readonly string[])[] {
  return [...previous.events.values()]
    .filter(({ uid, day }) => !kept.has(uid) && dayNumber(first) <= day && day <= dayNumber(last))
    .map(({ lines, sequence, isCancelled }) =>
      isCancelled ? lines : cancelledLines(lines, sequence + 1, stamp),
    );
}

function startOf(lines: readonly string[]): string {
  return lines.find((line) => line.startsWith('DTSTART'))?.replace(/^[^:]*:/, '') ?? '';
}

function inOrderOfTime(one: readonly string[], other: readonly string[]): number {
  const key = (lines: readonly string[]) =>
    `${startOf(lines)} ${lines.find((line) => line.startsWith('UID:'))}`;
  return key(one) < key(other) ? -1 : 1;
}

/** First and last day of these events, the span's where there are none. */
function daysOf(
  events: readonly (readonly string[])[],
  { first, last }: ExportOptions,
): readonly DayNumber[] {
  const days = events.map((lines) => {
    const text = startOf(lines);
    return (
      Date.UTC(Number(text.slice(0, 4)), Number(text.slice(4, 6)) - 1, Number(text.slice(6, 8))) / 86_400_000
    );
  });
  return [Math.min(dayNumber(first), ...days), Math.max(dayNumber(last), ...days) + 1];
}

/**
 * The sessions of a span, its `#event` days and its look backs, as the text of an iCalendar file (RFC 5545). An event keeps its
 * identifier however often it is exported, and wherever the session is moved, so that a calendar which has it already
 * changes it instead of taking it twice. Skipped sessions, and with the last export those that are gone, are cancelled.
 * Private words are left out: reasons, pain, remarks, pictures. The same journal gives the same text, but for `stamp`;
 * with the last export at hand not even that changes while nothing else does.
 */
export function exportCalendar(journal: Journal, options: ExportOptions): string {
  const previous = readPreviousExport(options.previous ?? '', options.journalId);
  const events = eventsIn(journal, options);
  const kept = new Set(events.map(({ uid }) => uid));
  const written = [
    ...events.map((event) => linesAfter(event, previous.events.get(event.uid), options.stamp)),
    ...goneLines(previous, kept, options),
  ].sort(inOrderOfTime);
  const [firstDay = 0, lastDay = 0] = daysOf(written, options);
  const zones = zonesIn(written.flat());
  // A calendar without any component is none.
  const named = written.length === 0 ? new Set([options.zone]) : zones;
  return fileOf([
    'BEGIN:VCALENDAR',
    'VERSION:2.0',
    `PRODID:${product}`,
    'CALSCALE:GREGORIAN',
    ...[...named]
      .sort()
      .flatMap((zone) =>
        isKnownZone(zone) ? timeZoneLines(zone, firstDay, lastDay) : (previous.zones.get(zone) ?? []),
      ),
    ...written.flat(),
    'END:VCALENDAR',
  ]);
}
